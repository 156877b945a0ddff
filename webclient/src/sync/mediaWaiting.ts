// Which photos and voice notes wait to be sent: those that a living record speaks of. One that was taken back
// before it was sent stays on the phone, and goes when its record is put back.

import type { MediaRow, PhoneDb, RecordRow } from "../store/db.ts";
import { startingWith } from "../store/table.ts";

export const MEDIA_KINDS = ["photo", "voice_note"] as const;

export async function waitingMedia(db: PhoneDb): Promise<MediaRow[]> {
  const rows = await db.media.find("state", IDBKeyRange.only("here"));
  const spoken = new Set<string>();
  for (const logbook_id of new Set(rows.map((row) => row.logbook_id))) {
    for (const record of await mediaRecords(db, logbook_id)) spoken.add(`${logbook_id} ${record.body!.media_sha256}`);
  }
  return rows.filter((row) => spoken.has(`${row.logbook_id} ${row.sha256}`));
}

async function mediaRecords(db: PhoneDb, logbook_id: string): Promise<RecordRow[]> {
  return (await Promise.all(MEDIA_KINDS.map((shelf) => db.records.find("day", startingWith(logbook_id, shelf))))).flat();
}
