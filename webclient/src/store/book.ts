// What screens use of the logbook: save, take back, settle, and live lists. Everything here is local and
// answers without the network; sync sends it later.

import { logbooks } from "../account/session.ts";
import type { Bodies, BodyInputs, KindName, Role } from "../entries/bodies.ts";
import type { Fork } from "../entries/fold.ts";
import type { Plain } from "../entries/merge.ts";
import { afterSave } from "./afterSave.ts";
import type { EntryState, RecordRow } from "./db.ts";
import { useLive } from "./live.ts";
import { withReopening } from "./open.ts";
import { here, logbookId, openDb, type Place } from "./place.ts";
import { findNewest, findRecord, findRecords, findStandings } from "./read.ts";
import type { Link } from "./recordRow.ts";
import { NotSaved, notSaved, troubleOf } from "./trouble.ts";
import { type Shown, writeBody, writeEdit, writePutBack, writeTakeBack } from "./write.ts";

export { useAsOpened } from "./asOpened.ts";
export { useDraft } from "./drafts.ts";
export { NotSaved } from "./trouble.ts";

export interface SavedRecord<K extends KindName = KindName> {
  record_id: string;
  kind: K;
  body: Bodies[K];
  local_date: string;
  recorded_at: string;
  number: number | null;
  author: string | null;
  author_name: string | null;
  state: EntryState;
  fork?: Fork;
}

export type Where = Partial<Record<Link, string>>;

/** Saves a new record, or the whole of one anew. Resolves when it is on the disk; rejects with NotSaved. */
export async function save<K extends KindName>(kind: K, body: BodyInputs[K], record_id?: string): Promise<SavedRecord<K>> {
  return saved<K>(await durably((place) => writeBody(place, kind, body, record_id)));
}

/** Changes a part of a record as it was shown, and nothing that was said of it since. Resolves and rejects as `save`;
 * null where it was taken back in the meantime. */
export async function edit<K extends KindName>(shown: Shown<K>, part: Partial<BodyInputs[K]>): Promise<SavedRecord<K> | null> {
  const done = await durably((place) => writeEdit(place, shown, part));
  return done && saved<K>(done);
}

/** Takes a record back. Nothing is erased: `putBack` undoes it, today or next year. */
export async function takeBack(record_id: string): Promise<void> {
  await durably((place) => writeTakeBack(place, record_id));
}

export async function putBack(record_id: string): Promise<void> {
  await durably((place) => writePutBack(place, record_id));
}

/** Ends a fork: every side is superseded by this body; null takes the record back. */
export async function settle(record_id: string, body: Plain | null): Promise<void> {
  const row = await findRecord(here(), record_id);
  if (!row) return;
  await durably((place) => writeBody(place, row.kind as KindName, body as never, record_id));
}

async function durably<Row extends RecordRow | null>(work: (place: Place) => Promise<Row>): Promise<Row> {
  try {
    const place = here();
    const done = await withReopening(place.db, () => work(place));
    notSaved.value = null;
    if (done) afterSave(place, done);
    return done;
  } catch (error) {
    notSaved.value = troubleOf(error);
    throw new NotSaved(notSaved.value, error);
  }
}

/** The living records of a kind, oldest day first; undefined while loading. */
export function useRecords<K extends KindName>(kind: K, where: Where = {}): SavedRecord<K>[] | undefined {
  const id = logbookId.value;
  return useLive(async () => (await findRecords(here(), kind, where)).map(saved<K>), [id, kind, where]);
}

/** The living records of the newest days, newest first, at most `most`. */
export function useNewest<K extends KindName>(kind: K, most: number): SavedRecord<K>[] | undefined {
  const id = logbookId.value;
  return useLive(async () => (await findNewest(here(), kind, most)).map(saved<K>), [id, kind, most]);
}

export function useRecord<K extends KindName>(kind: K, record_id: string): SavedRecord<K> | undefined {
  const id = logbookId.value;
  const row = useLive(() => findRecord(here(), record_id), [id, kind, record_id]);
  return row && row.shelf === kind ? saved<K>(row) : undefined;
}

/** Whether a record is on this phone at all: "loading", "here" or "missing" (taken back counts as missing). */
export function useWhetherHere(kind: KindName, record_id: string): "loading" | "here" | "missing" {
  const id = logbookId.value;
  const found = useLive(async () => ({ row: await findRecord(here(), record_id) }), [id, kind, record_id]);
  return !found ? "loading" : found.row?.shelf === kind ? "here" : "missing";
}

/** The standings last pulled, of one horse or of all; each says its own as-of date. */
export function useStandings(horse_id?: string): Plain[] | undefined {
  const id = logbookId.value;
  return useLive(() => findStandings(here(), horse_id), [id, horse_id]);
}

/** A rulebook as last pulled; undefined while loading or when this phone does not have it. */
export function useRulebook(id: string): Plain | undefined {
  return useLive(async () => (await openDb.value!.rulebooks.get(id))?.rulebook, [id]);
}

/** Those of these ids that this phone has; all of them where none are given. */
export function useRulebooks(ids?: string[]): Plain[] | undefined {
  const read = async () => {
    const { rulebooks } = openDb.value!;
    return (await (ids ? rulebooks.bulkGet(ids) : rulebooks.toArray())).flatMap((row) => (row ? [row.rulebook] : []));
  };
  return useLive(read, [ids]);
}

/** The person's role in the logbook on screen. */
export function useRole(): Role {
  const id = logbookId.value;
  return logbooks.value.find((logbook) => logbook.id === id)?.role ?? "reader";
}

function saved<K extends KindName>(row: RecordRow): SavedRecord<K> {
  const { record_id, local_date, recorded_at, number, author, author_name, state } = row;
  const record = { record_id, kind: row.kind as K, body: row.body as unknown as Bodies[K] };
  return { ...record, local_date, recorded_at, number, author, author_name, state, ...(row.fork && { fork: row.fork }) };
}
