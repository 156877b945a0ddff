// A copy of everything on this phone: every logbook, every entry, sent or not, in the form the server's own
// export has, with the photos and voice notes that are here. Written in pieces: a large logbook needs no large text.

import type { LogbookInfo } from "../account/session.ts";
import type { EntryRow, PhoneDb } from "../store/db.ts";
import { startingWith } from "../store/table.ts";
import { readCursor } from "../sync/cursor.ts";
import { toBase64 } from "./base64.ts";

const PER_PIECE = 500;

/** The file as pieces of JSON text. `only`: the states to keep, all when left out. */
export async function piecesOfCopy(db: PhoneDb, logbooks: LogbookInfo[], only?: EntryRow["state"][]): Promise<string[]> {
  const pieces = [`{"fieldtally_phone_export":1,"exported_at":${JSON.stringify(new Date().toISOString())},"logbooks":[`];
  for (const [place, logbook] of logbooks.entries()) {
    const { log_id, number } = await readCursor(db, logbook.id);
    const about = { id: logbook.id, title: logbook.title, role: logbook.role, log_id, last_number: number };
    pieces.push(`${place ? "," : ""}{"fieldtally_export":1,"logbook":${JSON.stringify(about)},"entries":[`);
    await addEntries(db, logbook.id, only, pieces);
    pieces.push('],"media":[');
    await addMedia(db, logbook.id, only !== undefined, pieces);
    pieces.push("]}");
  }
  return [...pieces, "]}\n"];
}

async function addEntries(db: PhoneDb, id: string, only: EntryRow["state"][] | undefined, pieces: string[]): Promise<void> {
  let first = true;
  for (let after = ""; ; ) {
    const page = await db.entries.find(null, IDBKeyRange.bound([id, after], [id, []], true), { most: PER_PIECE });
    if (!page.length) return;
    for (const entry of page) {
      if (only && !only.includes(entry.state)) continue;
      pieces.push((first ? "" : ",\n") + JSON.stringify(entry));
      first = false;
    }
    after = page.at(-1)!.id;
  }
}

// as the server's export has them: {sha256, media_type, size_bytes, base64}
async function addMedia(db: PhoneDb, id: string, unsentOnly: boolean, pieces: string[]): Promise<void> {
  const rows = (await db.media.find(null, startingWith(id))).filter((row) => !unsentOnly || row.state === "here");
  let first = true;
  for (const { sha256, media_type, size_bytes } of rows) {
    const found = await db.media_bytes.get([id, sha256]);
    if (!found) continue;
    pieces.push((first ? "" : ",\n") + JSON.stringify({ sha256, media_type, size_bytes, base64: toBase64(found.bytes) }));
    first = false;
  }
}
