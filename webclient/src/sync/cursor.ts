// How far this phone has read a logbook, and in which run of numbers.

import { type EntryState, getMeta, type PhoneDb, setMeta } from "../store/db.ts";
import { startingWith } from "../store/table.ts";

export interface Cursor {
  log_id: string | null;
  number: number;
}

const keyOf = (logbook_id: string) => `cursor:${logbook_id}`;

export async function readCursor(db: PhoneDb, logbook_id: string): Promise<Cursor> {
  return (await getMeta<Cursor>(db, keyOf(logbook_id))) ?? { log_id: null, number: 0 };
}

export async function writeCursor(db: PhoneDb, logbook_id: string, cursor: Cursor): Promise<void> {
  await setMeta(db, keyOf(logbook_id), cursor);
}

/** Whether the phone holds exactly the entries numbered 1 to its cursor and no other number: the count of all
 * that are numbered must equal it. Only after everything was fetched. */
export async function countsAgree(db: PhoneDb, logbook_id: string): Promise<boolean> {
  const { number } = await readCursor(db, logbook_id);
  return (await db.entries.countOf("number", IDBKeyRange.bound([logbook_id], [logbook_id, Infinity]))) === number;
}

/** Keeps everything, takes all numbers away and starts from zero: the next push and pull bring them back. */
export async function startOver(db: PhoneDb, logbook_id: string, log_id: string | null): Promise<void> {
  await db.transaction(["entries", "records", "meta", "media"], async (inside) => {
    await inside.media.modify(startingWith(logbook_id), (row) => void (row.state = "here"));
    await inside.entries.modify(startingWith(logbook_id), withoutNumber);
    await inside.records.modify(startingWith(logbook_id), withoutNumber);
    await writeCursor(inside, logbook_id, { log_id, number: 0 });
  });
}

function withoutNumber(row: { number: number | null; state: EntryState }): void {
  row.number = null;
  if (row.state !== "needs_you") row.state = "here";
}
