// Stores one page of pulled entries with the records they change and the cursor, all or nothing.

import type { EntryRow, RecordRow } from "../store/db.ts";
import { byRecord, refold, rowOf } from "../store/refold.ts";
import type { SyncContext } from "./context.ts";
import { type Cursor, writeCursor } from "./cursor.ts";
import type { Page } from "./pull.ts";

export async function storePage(context: SyncContext, page: Page, before: Cursor): Promise<Cursor> {
  const { db, logbook_id, tally } = context;
  const cursor = { log_id: page.log_id, number: page.entries.at(-1)?.number ?? before.number };
  const rows: EntryRow[] = page.entries.map((entry) => ({ ...entry, logbook_id, state: "sent" }));
  await db.transaction(["entries", "records", "meta"], async (inside) => {
    const known = await inside.entries.bulkGet(rows.map((row) => [logbook_id, row.id] as [string, string]));
    await inside.entries.bulkPut(rows);
    await updateRecords({ ...context, db: inside }, rows);
    await writeCursor(inside, logbook_id, cursor);
    tally.received += known.filter((row) => row === undefined).length;
  });
  return cursor;
}

async function updateRecords({ db, logbook_id, tally }: SyncContext, rows: EntryRow[]): Promise<void> {
  const groups = byRecord(rows);
  const ids = [...groups.keys()];
  const records = await db.records.bulkGet(ids.map((id) => [logbook_id, id] as [string, string]));
  const made: RecordRow[] = [];
  const again: string[] = [];
  ids.forEach((id, place) => {
    const row = withoutFolding(logbook_id, groups.get(id)!, records[place]);
    if (row) made.push(row);
    else again.push(id);
  });
  await db.records.bulkPut(made);
  if (!again.length) return;
  await refold(db, logbook_id, again);
  const after = await db.records.bulkGet(again.map((id) => [logbook_id, id] as [string, string]));
  tally.forks += after.filter((row) => row?.forked).length;
}

// a record new to this phone, or the echo of the entry that is its only head; undefined: fold all of it
function withoutFolding(logbook_id: string, group: EntryRow[], record: RecordRow | undefined): RecordRow | undefined {
  if (!record) return rowOf(logbook_id, group);
  const [entry] = group;
  if (group.length > 1 || record.heads.length > 1 || record.heads[0] !== entry!.id) return undefined;
  const { number, author = null, author_name = null } = entry!;
  return { ...record, number, author, author_name, state: "sent" };
}
