// Finds records by index: no query here walks more rows than it returns, give or take one condition.

import { byNumber } from "../entries/fold.ts";
import type { Plain } from "../entries/merge.ts";
import type { EntryRow, RecordRow } from "./db.ts";
import type { Place } from "./place.ts";
import type { Link } from "./recordRow.ts";
import { startingWith } from "./table.ts";

// the narrowest first: an outing has dozens of attempts, a horse has thousands
const NARROWEST: Link[] = ["about_id", "outing_id", "fence_id", "track_id", "field_id", "horse_id"];

/** Living records on a shelf that carry every link asked for, by day and then by when they were made. */
export async function findRecords({ db, logbook_id }: Place, shelf: string, where: Partial<Record<Link, string>>): Promise<RecordRow[]> {
  const asked = NARROWEST.filter((link) => where[link] !== undefined);
  const [first, ...others] = asked;
  const rows = await db.records.find(first ?? "day", first ? IDBKeyRange.only([logbook_id, shelf, where[first]]) : startingWith(logbook_id, shelf));
  return rows.filter((row) => others.every((link) => row[link] === where[link])).sort(byTime);
}

export function findRecord({ db, logbook_id }: Place, record_id: string): Promise<RecordRow | undefined> {
  return db.records.get([logbook_id, record_id]);
}

/** The newest days first, at most `most`. */
export function findNewest({ db, logbook_id }: Place, shelf: string, most: number): Promise<RecordRow[]> {
  return db.records.find("day", startingWith(logbook_id, shelf), { newest: true, most });
}

/** Records on a shelf of a day or later, by day. */
export function findSince({ db, logbook_id }: Place, shelf: string, day: string): Promise<RecordRow[]> {
  return db.records.find("day", IDBKeyRange.bound([logbook_id, shelf, day], [logbook_id, shelf, []]));
}

/** Everything said about one record: notes and remarks, living only. */
export async function findAbout({ db, logbook_id }: Place, about_id: string): Promise<RecordRow[]> {
  const rows = await db.records.find("about", IDBKeyRange.only([logbook_id, about_id]));
  return rows.filter((row) => row.body !== null).sort(byTime);
}

/** Every entry of one record, as the fold orders them. */
export async function findEntries({ db, logbook_id }: Place, record_id: string): Promise<EntryRow[]> {
  return (await db.entries.find("record", IDBKeyRange.only([logbook_id, record_id]))).sort(byNumber);
}

/** Records taken back, newest day first, with the last body each had. */
export async function findTakenBack(place: Place, most: number): Promise<{ row: RecordRow; last: Plain | null }[]> {
  const rows = await findNewest(place, "gone", most);
  return Promise.all(rows.map(async (row) => ({ row, last: await lastBody(place, row.record_id) })));
}

/** The last body a record had before it was taken back; null where it never had one. */
export async function lastBody(place: Place, record_id: string): Promise<Plain | null> {
  const living = (await findEntries(place, record_id)).filter((entry) => entry.body !== null);
  return (living.at(-1)?.body as Plain | undefined) ?? null;
}

export function findForked({ db, logbook_id }: Place): Promise<RecordRow[]> {
  return db.records.find("forked", IDBKeyRange.only([logbook_id, 1]));
}

export async function findStandings({ db, logbook_id }: Place, horse_id?: string): Promise<Plain[]> {
  const range = horse_id === undefined ? startingWith(logbook_id) : startingWith(logbook_id, horse_id);
  return (await db.standings.find(null, range)).map((row) => row.standing);
}

function byTime(one: RecordRow, other: RecordRow): number {
  if (one.day !== other.day) return one.day < other.day ? -1 : 1;
  if (one.recorded_at !== other.recorded_at) return one.recorded_at < other.recorded_at ? -1 : 1;
  return one.record_id < other.record_id ? -1 : 1;
}
