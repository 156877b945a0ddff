// Keeps the records in step with the entries. Must run inside the transaction that writes the entries.

import { foldRecord } from "../entries/fold.ts";
import type { EntryRow, PhoneDb, RecordRow } from "./db.ts";
import { recordRow, worstState } from "./recordRow.ts";

/** Writes anew the record of each id from all its entries on this phone. */
export async function refold(db: PhoneDb, logbook_id: string, recordIds: Iterable<string>): Promise<void> {
  const ids = [...new Set(recordIds)];
  const found = await Promise.all(ids.map((id) => db.entries.find("record", IDBKeyRange.only([logbook_id, id]))));
  const groups = byRecord(found.flat());
  await db.records.bulkPut([...groups.values()].map((group) => rowOf(logbook_id, group)));
  await db.records.bulkDelete(ids.filter((id) => !groups.has(id)).map((id) => [logbook_id, id] as [string, string]));
}

export function rowOf(logbook_id: string, group: EntryRow[]): RecordRow {
  const folded = foldRecord(group);
  const heads = group.filter((entry) => folded.heads.includes(entry.id));
  return recordRow(logbook_id, folded, worstState(heads));
}

export function byRecord(entries: EntryRow[]): Map<string, EntryRow[]> {
  const groups = new Map<string, EntryRow[]>();
  for (const entry of entries) {
    const group = groups.get(entry.record_id);
    if (group) group.push(entry);
    else groups.set(entry.record_id, [entry]);
  }
  return groups;
}
