// Keeps a photo or a voice note on this phone: its bytes, the record of them and the entry, all or none. Records
// outrank photos: where room is short a photo is refused while there is still room for what was ridden.

import type { BodyInputs } from "../entries/bodies.ts";
import { afterSave } from "../store/afterSave.ts";
import type { PhoneDb } from "../store/db.ts";
import { withReopening } from "../store/open.ts";
import { room } from "../store/persist.ts";
import { here } from "../store/place.ts";
import { NotSaved, troubleOf } from "../store/trouble.ts";
import { writeBody } from "../store/write.ts";

export type MediaKind = "photo" | "voice_note";
type Described<K extends MediaKind> = Omit<BodyInputs[K], "media_sha256" | "size_bytes">;

/** What stays free for records: some ten thousand attempts. */
export const RESERVE_BYTES = 8 * 1024 * 1024;
// larger values are put into a file of their own, squeezed to nothing and not counted
const FILLER_BYTES = 32 * 1024;

/** The new record's id, once all of it is on the disk. Rejects with NotSaved; then nothing was changed. */
export async function keepMedia<K extends MediaKind>(kind: K, body: Described<K>, bytes: ArrayBuffer): Promise<string> {
  const place = here();
  const { logbook_id } = place;
  const sha256 = await digestOf(bytes);
  const row = { logbook_id, sha256, media_type: body.media_type, size_bytes: bytes.byteLength, state: "here" as const };
  const whole = { ...body, media_sha256: sha256, size_bytes: bytes.byteLength } as unknown as BodyInputs[K];
  try {
    await mustFit(bytes.byteLength);
    const record = await withReopening(place.db, () => place.db.transaction(["entries", "records", "media", "media_bytes"], async (db) => {
      await leaveRoom(db, logbook_id);
      await storeBytes(db, row, bytes);
      return writeBody({ ...place, db }, kind, whole);
    }));
    afterSave(place, record);
    return record.record_id;
  } catch (error) {
    throw new NotSaved(troubleOf(error), error);
  }
}

export async function storeBytes(db: PhoneDb, row: Parameters<PhoneDb["media"]["put"]>[0], bytes: ArrayBuffer): Promise<void> {
  await db.media.put(row);
  await db.media_bytes.put({ logbook_id: row.logbook_id, sha256: row.sha256, bytes });
}

export async function digestOf(bytes: ArrayBuffer): Promise<string> {
  return Array.from(new Uint8Array(await crypto.subtle.digest("SHA-256", bytes)), (each) => each.toString(16).padStart(2, "0")).join("");
}

// Browsers no longer say truly how much room there is. What a transaction writes they do count, also what it takes
// away again: with the room for records in it, the photo fails first.
async function leaveRoom(db: PhoneDb, logbook_id: string): Promise<void> {
  const filler = { logbook_id, sha256: "", bytes: new ArrayBuffer(FILLER_BYTES) };
  await db.media_bytes.bulkPut(Array(RESERVE_BYTES / FILLER_BYTES).fill(filler));
  await db.media_bytes.delete([logbook_id, ""]);
}

async function mustFit(size_bytes: number): Promise<void> {
  const found = await room();
  if (found && found.of_bytes - found.used_bytes < size_bytes + RESERVE_BYTES) throw new DOMException("kept free for records", "QuotaExceededError");
}
