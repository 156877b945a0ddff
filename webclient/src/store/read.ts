// Finds records by index: no query here walks more rows than it returns, give or take one condition.

import Dexie from "dexie";

import { byNumber } from "../entries/fold.ts";
import type { Plain } from "../entries/merge.ts";
import type { RecordRow } from "./db.ts";
import type { Place } from "./place.ts";
import type { Link } from "./recordRow.ts";

// the narrowest first: an outing has dozens of attempts, a horse has thousands
const NARROWEST: Link[] = ["about_id", "outing_id", "fence_id", "track_id", "field_id", "horse_id"];

/** Living records on a shelf that carry every link asked for, by day and then by when they were made. */
export async function findRecords(place: Place, shelf: string, where: Partial<Record<Link, string>>): Promise<RecordRow[]> {
  const asked = NARROWEST.filter((link) => where[link] !== undefined);
  const [first, ...others] = asked;
  const rows = await (first ? byLink(place, shelf, first, where[first]!) : byDay(place, shelf));
  return rows.filter((row) => others.every((link) => row[link] === where[link])).sort(byTime);
}

export function findRecord(place: Place, record_id: string): Promise<RecordRow | undefined> {
  return place.db.records.get([place.logbook_id, record_id]);
}

/** The newest days first, at most `most`. */
export function findNewest(place: Place, shelf: string, most: number): Promise<RecordRow[]> {
  return shelfByDay(place, shelf).reverse().limit(most).toArray();
}

/** Everything said about one record: notes and remarks, living only. */
export async function findAbout(place: Place, about_id: string): Promise<RecordRow[]> {
  const rows = await place.db.records.where("[logbook_id+about_id]").equals([place.logbook_id, about_id]).toArray();
  return rows.filter((row) => row.body !== null).sort(byTime);
}

/** Records taken back, newest day first, with the last body each had. */
export async function findTakenBack(place: Place, most: number): Promise<{ row: RecordRow; last: Plain | null }[]> {
  const rows = await findNewest(place, "gone", most);
  return Promise.all(rows.map(async (row) => ({ row, last: await lastBody(place, row.record_id) })));
}

/** The last body a record had before it was taken back; null where it never had one. */
export async function lastBody(place: Place, record_id: string): Promise<Plain | null> {
  const entries = await place.db.entries.where({ logbook_id: place.logbook_id, record_id }).toArray();
  const living = entries.filter((entry) => entry.body !== null).sort(byNumber);
  return (living.at(-1)?.body as Plain | undefined) ?? null;
}

export function findForked(place: Place): Promise<RecordRow[]> {
  return place.db.records.where("[logbook_id+forked]").equals([place.logbook_id, 1]).toArray();
}

export async function findStandings(place: Place, horse_id?: string): Promise<Plain[]> {
  const from = [place.logbook_id, horse_id ?? Dexie.minKey, Dexie.minKey, Dexie.minKey];
  const to = [place.logbook_id, horse_id ?? Dexie.maxKey, Dexie.maxKey, Dexie.maxKey];
  const key = "[logbook_id+horse_id+rulebook_id+level_id]";
  return (await place.db.standings.where(key).between(from, to).toArray()).map((row) => row.standing);
}

function byLink(place: Place, shelf: string, link: Link, id: string): Promise<RecordRow[]> {
  return place.db.records.where(`[logbook_id+shelf+${link}]`).equals([place.logbook_id, shelf, id]).toArray();
}

function byDay(place: Place, shelf: string): Promise<RecordRow[]> {
  return shelfByDay(place, shelf).toArray();
}

function shelfByDay(place: Place, shelf: string) {
  const { db, logbook_id } = place;
  return db.records.where("[logbook_id+shelf+day]").between([logbook_id, shelf, Dexie.minKey], [logbook_id, shelf, Dexie.maxKey]);
}

function byTime(one: RecordRow, other: RecordRow): number {
  if (one.day !== other.day) return one.day < other.day ? -1 : 1;
  if (one.recorded_at !== other.recorded_at) return one.recorded_at < other.recorded_at ? -1 : 1;
  return one.record_id < other.record_id ? -1 : 1;
}
