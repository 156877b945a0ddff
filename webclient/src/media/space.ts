// What photos and voice notes take on this phone, and taking those off it that the server has.

import type { MediaRow, PhoneDb } from "../store/db.ts";
import { makeMediaWire, mediaPath, type MediaWire } from "../sync/mediaWire.ts";

export async function mediaHere(db: PhoneDb): Promise<MediaRow[]> {
  return db.media.toArray();
}

/** Takes off this phone what the server says, now, that it has whole; how many that were. Null: it did not answer.
 * What waits to be sent is never touched. */
export async function freeSpace(db: PhoneDb, wire: MediaWire = makeMediaWire()): Promise<number | null> {
  let freed = 0;
  for (const row of await db.media.find("state", IDBKeyRange.only("sent"))) {
    const reply = await wire.ask(mediaPath(row));
    if (reply.kind === "offline") return freed || null;
    if (reply.kind === "ok" && reply.data.complete) freed += await drop(db, row);
    else if (reply.kind === "ok") await db.media.put({ ...row, state: "here" }); // the server lost it: send it again
  }
  return freed;
}

async function drop(db: PhoneDb, { logbook_id, sha256 }: MediaRow): Promise<number> {
  await db.transaction(["media", "media_bytes"], async (inside) => {
    await inside.media.delete([logbook_id, sha256]);
    await inside.media_bytes.delete([logbook_id, sha256]);
  });
  return 1;
}
