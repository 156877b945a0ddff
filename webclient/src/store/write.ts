// The only place where this phone writes into its logbooks: one entry and the record it changes in one
// transaction, whose promise resolves when the transaction is complete on the disk, and not before.

import { type Bodies, type BodyInputs, type KindName } from "../entries/bodies.ts";
import { type Entry, makeEntry } from "../entries/entry.ts";
import { merge, type Plain } from "../entries/merge.ts";
import { current } from "../entries/upcast.ts";
import type { EntryRow, RecordRow } from "./db.ts";
import type { Place } from "./place.ts";
import { findRecord, lastBody } from "./read.ts";
import { recordRow } from "./recordRow.ts";
import { refold } from "./refold.ts";

/** A new record, or an edit that supersedes all that was said of it so far. */
export function writeBody<K extends KindName>(
  place: Place, kind: K, body: BodyInputs[K] | null, record_id?: string,
): Promise<RecordRow> {
  return inTransaction(place, async (place) => {
    const before = record_id ? await findRecord(place, record_id) : undefined;
    const supersedes = before ? await withoutRefused(place, before) : [];
    const entry = entryRow(place, makeEntry(kind, body, { ...(record_id && { record_id }), supersedes }));
    await place.db.entries.add(entry);
    const row = rowAfter(entry, before);
    await place.db.records.put(row);
    return row;
  });
}

/** A record as a screen shows it. */
export interface Shown<K extends KindName = KindName> {
  record_id: string;
  kind: K;
  body: Bodies[K];
}

/**
 * What `part` changes of the record as it was `shown`, on top of whatever was said of it since: a note being kept
 * while a chip beside it is tapped, or another's edit that has come in under an open form. Where both changed one
 * thing, this edit has the last word. Null, and nothing is written: it was taken back since, and stays so.
 */
export function writeEdit<K extends KindName>(place: Place, { record_id, kind, body }: Shown<K>, part: Partial<BodyInputs[K]>): Promise<RecordRow | null> {
  return inTransaction(place, async (place) => {
    const now = (await mustHave(place, record_id)).body;
    if (now === null) return null;
    const shown = body as unknown as Plain;
    return writeBody(place, kind, merge(kind, [shown], [now, { ...shown, ...part }]).body as never, record_id);
  });
}

/** Takes a record back, whatever it says now; nothing is erased, and `putBack` undoes it. */
export function writeTakeBack(place: Place, record_id: string): Promise<RecordRow> {
  return inTransaction(place, async (place) => {
    const before = await mustHave(place, record_id);
    return writeBody(place, before.kind as KindName, null, record_id);
  });
}

/** Gives a record that was taken back the last body it had. */
export function writePutBack(place: Place, record_id: string): Promise<RecordRow> {
  return inTransaction(place, async (place) => {
    const before = await mustHave(place, record_id);
    const body = before.body ?? (await lastBody(place, record_id));
    return writeBody(place, before.kind as KindName, body as never, record_id);
  });
}

/** Drops refused entries from this phone for good: the one thing here that erases, and only on demand. */
export function discardEntries(place: Place, record_id: string, entryIds: string[]): Promise<void> {
  return inTransaction(place, async (place) => {
    await place.db.entries.bulkDelete(entryIds.map((id) => [place.logbook_id, id] as [string, string]));
    await refold(place.db, place.logbook_id, [record_id]);
  });
}

/** All of `work` or nothing; it must use the place it is given. */
export function inTransaction<T>(place: Place, work: (inside: Place) => Promise<T>): Promise<T> {
  return place.db.transaction(["entries", "records"], (db) => work({ ...place, db }));
}

// editing a refused record mends it: the refused entries go, and what they superseded is superseded again
async function withoutRefused(place: Place, before: RecordRow): Promise<string[]> {
  if (before.state !== "needs_you") return before.heads;
  const heads = await place.db.entries.bulkGet(before.heads.map((id) => [place.logbook_id, id] as [string, string]));
  const refused = heads.filter((head) => head?.state === "needs_you");
  await place.db.entries.bulkDelete(refused.map((head) => [place.logbook_id, head!.id] as [string, string]));
  const stand = before.heads.filter((id) => !refused.some((head) => head!.id === id));
  return [...new Set([...stand, ...refused.flatMap((head) => head!.supersedes)])];
}

function entryRow(place: Place, entry: Entry): EntryRow {
  const { id: author, display_name: author_name } = place.me;
  return { ...entry, number: null, author, author_name, logbook_id: place.logbook_id, state: "here" };
}

// The new entry supersedes every head, so it alone is the value: no need to fold the whole history.
function rowAfter(entry: EntryRow, before: RecordRow | undefined): RecordRow {
  const body = entry.body && current(entry.kind, entry.kind_version, entry.body as Plain);
  const written = before ?? entry;
  const folded = {
    record_id: entry.record_id, kind: entry.kind, body, local_date: written.local_date,
    recorded_at: written.recorded_at, number: null, author: entry.author!, author_name: entry.author_name!,
    heads: [entry.id], fork: null, unreadable: false,
  };
  return recordRow(entry.logbook_id, folded, "here");
}

async function mustHave(place: Place, record_id: string): Promise<RecordRow> {
  const row = await findRecord(place, record_id);
  if (!row) throw new Error("this record is not on this phone");
  return row;
}
