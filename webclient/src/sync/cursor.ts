// How far this phone has read a logbook, and in which run of numbers.

import Dexie from "dexie";

import { getMeta, type PhoneDb, setMeta } from "../store/db.ts";

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

/** Whether the phone holds exactly the entries numbered 1 to its cursor: their count must equal it. */
export async function countsAgree(db: PhoneDb, logbook_id: string): Promise<boolean> {
  const { number } = await readCursor(db, logbook_id);
  const upTo = db.entries.where("[logbook_id+number]").between([logbook_id, Dexie.minKey], [logbook_id, number], true, true);
  return (await upTo.count()) === number;
}

/** Keeps everything, takes all numbers away and starts from zero: the next push and pull bring them back. */
export async function startOver(db: PhoneDb, logbook_id: string, log_id: string | null): Promise<void> {
  await db.transaction("rw", db.entries, db.records, db.meta, async () => {
    const all: [unknown, unknown] = [[logbook_id, Dexie.minKey], [logbook_id, Dexie.maxKey]];
    await db.entries.where("[logbook_id+id]").between(...all).modify((entry) => {
      entry.number = null;
      if (entry.state !== "needs_you") entry.state = "here";
    });
    await db.records.where("[logbook_id+record_id]").between(...all).modify((record) => {
      record.number = null;
      if (record.state !== "needs_you") record.state = "here";
    });
    await writeCursor(db, logbook_id, { log_id, number: 0 });
  });
}
