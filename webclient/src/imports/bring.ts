// Rows of a table as entries of the logbook. Every id is made from what the row says, so that the same table
// brought in twice, on this phone or another, is there once. Nothing is stored here.

import type { TableKind } from "../copies/columns.ts";
import { KINDS, type KindName, type Profile } from "../entries/bodies.ts";
import type { Plain } from "../entries/merge.ts";
import type { RecordRow } from "../store/db.ts";
import { plainName } from "./columnNames.ts";
import type { Row } from "./readRow.ts";
import type { Incoming } from "./takeIn.ts";
import { uuid5 } from "./uuid5.ts";

export interface Asked {
  /** Horses, fields and fences that are not here may be made. */
  make: boolean;
  /** How the fences to be made are built, where the table does not say. */
  profile: Profile | null;
}

/** `entries` in the order to store them; `idOf`: row -> the entry it makes; `missing`: names not here, by kind;
 * `unbuilt`: a fence to be made has no profile. */
export interface Brought {
  entries: Incoming[];
  idOf: Map<number, string>;
  missing: Record<"horse" | "field" | "fence", string[]>;
  unbuilt: boolean;
}

interface Work extends Brought {
  logbook_id: string;
  asked: Asked;
  mark: string;
  known: Map<string, RecordRow>;
  ids: Map<string, string>;
  placed: Set<string>;
  often: Map<string, number>;
}

/** `records`: the living horses, fields and fences of the logbook; `mark`: the words that say where it came from. */
export async function bring(kind: TableKind, rows: readonly Row[], logbook_id: string, records: readonly RecordRow[], asked: Asked, mark: string): Promise<Brought> {
  const work: Work = {
    entries: [], idOf: new Map(), missing: { horse: [], field: [], fence: [] }, unbuilt: false, logbook_id, asked, mark,
    known: new Map(records.map((row) => [row.record_id, row])), ids: new Map(), placed: new Set(), often: new Map(),
  };
  for (const row of records) work.ids.set(nameKey(row.kind, String(row.body!.name ?? row.body!.label), row.field_id), row.record_id);
  knowFencesByLabel(work, records);
  for (const row of rows) if (!row.troubles.length) await (kind === "attempt" ? bringAttempt(work, row) : bringResult(work, kind, row));
  return work;
}

const nameKey = (kind: string, name: string, field_id: string | null = null) => [kind, plainName(name), kind === "fence" ? (field_id ?? "") : ""].join("|");

// a table without fields means the fence of that label, where the logbook has only one
function knowFencesByLabel({ ids }: Work, records: readonly RecordRow[]): void {
  const fences = records.filter(({ kind }) => kind === "fence").map((row) => [nameKey("fence", String(row.body!.label)), row.record_id] as const);
  for (const [key, id] of fences) if (!ids.has(key) && fences.filter(([other]) => other === key).length === 1) ids.set(key, id);
}

async function bringResult(work: Work, kind: TableKind, row: Row): Promise<void> {
  const { horse, record_id, ...values } = row.values as Plain & { horse: string; date: string };
  const horse_id = await thing(work, "horse", horse, values.date, { name: horse });
  if (!horse_id) return;
  const rulebook_id = values.rulebook_id ?? work.known.get(horse_id)?.body?.rulebook_id ?? null;
  const note = record_id ? values.note : [values.note, work.mark].filter(Boolean).join("\n");
  const body = { ...values, horse_id, note, ...(kind !== "jumping_round" && { rulebook_id }) };
  await once(work, row, kind, { ...values, horse_id }, body, values.date);
}

type Cells = Record<"date" | "horse" | "fence", string> & { [column: string]: string | null | undefined };

async function bringAttempt(work: Work, row: Row): Promise<void> {
  const { date, horse, field, fence, profile, activity = "cross_country_school", rein, ground, way, landing, company, pace, record_id: _, ...rest } = row.values as Cells;
  const horse_id = await thing(work, "horse", horse, date, { name: horse });
  const field_id = field ? await thing(work, "field", field, date, { name: field }) : null;
  const built = profile ?? work.asked.profile;
  if (field && !field_id) return lacks(work, "fence", fence, !built);
  const fence_id = await thing(work, "fence", fence, date, !built ? null : { label: fence, field_id, profile: built }, field_id);
  if (!horse_id || !fence_id) return;
  const day = { horse_id, field_id: field_id ?? work.known.get(fence_id)?.field_id ?? null, date, activity, from_memory: true, closed: true };
  const outing_id = await madeId(work, "outing", JSON.stringify(day));
  put(work, "outing", outing_id, { ...day, notes: work.mark }, date, 0);
  const body = { outing_id, fence_id, ...rest, presentation: { rein, ground, way, landing, company, pace } };
  await once(work, row, "attempt", body, body, date, outing_id);
}

/** The id of what has this name, or of what will be made under it; undefined while nobody allowed that. */
async function thing(work: Work, kind: "horse" | "field" | "fence", name: string, date: string, body: Plain | null, field_id?: string | null): Promise<string | undefined> {
  const key = nameKey(kind, name, field_id);
  const found = work.ids.get(key);
  if (found) return found;
  lacks(work, kind, name, kind === "fence" && !body);
  if (!work.asked.make || !body) return undefined;
  const id = await madeId(work, kind, key);
  work.ids.set(key, id);
  put(work, kind, id, body, date, 0);
  return id;
}

function lacks(work: Work, kind: keyof Brought["missing"], name: string, unbuilt: boolean): void {
  if (!work.missing[kind].includes(name)) work.missing[kind].push(name);
  work.unbuilt ||= unbuilt;
}

// two rows that say the same are two attempts: the second of them is another one, each time the table is read
async function once(work: Work, row: Row, kind: KindName, said: object, body: object, date: string, within = ""): Promise<void> {
  const text = JSON.stringify([said, Object.entries(row.cells).sort()]);
  const again = count(work, kind + text);
  const id = await madeId(work, kind, `${text}#${again}`);
  work.idOf.set(row.at, id);
  put(work, kind, id, body, date, count(work, within || id));
}

function count(work: Work, key: string): number {
  const n = work.often.get(key) ?? 0;
  work.often.set(key, n + 1);
  return n;
}

const madeId = (work: Work, kind: string, text: string): Promise<string> => uuid5(work.logbook_id, `${kind} ${text}`);

// at noon, one second after the other: the order of the table is the order of the day
function put(work: Work, kind: KindName, record_id: string, body: object, date: string, second: number): void {
  if (work.placed.has(record_id)) return;
  work.placed.add(record_id);
  const recorded_at = new Date(Date.parse(`${date}T12:00:00Z`) + second * 1000).toISOString();
  work.entries.push({
    id: record_id, record_id, supersedes: [], kind, kind_version: KINDS[kind].version, body: JSON.parse(JSON.stringify(body)) as object,
    recorded_at, utc_offset_min: 0, local_date: date, clock: null,
  });
}
