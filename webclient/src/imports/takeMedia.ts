// Photos and voice notes from elsewhere: taken in by their digest, so that none is there twice and none that was
// damaged on the way is taken for the one its entry means.

import { fromBase64 } from "../copies/base64.ts";
import { digestOf, storeBytes } from "../media/keep.ts";
import type { PhoneDb } from "../store/db.ts";
import type { Place } from "../store/place.ts";
import { refuse } from "./takeIn.ts";

/** One file of a copy. */
export interface CopiedMedia {
  sha256: string;
  media_type: string;
  base64: string;
}

/** Takes in what is not here yet; how many were, and how many could not be. */
export async function takeMedia({ db, logbook_id }: Place, media: readonly CopiedMedia[]): Promise<{ added: number; damaged: number }> {
  const told = { added: 0, damaged: 0 };
  for (const { sha256, media_type, base64 } of media) {
    if (await db.media.get([logbook_id, sha256])) continue;
    const bytes = await bytesOf(base64);
    if (!bytes || (await digestOf(bytes)) !== sha256) told.damaged += 1;
    else {
      await putMedia(db, logbook_id, sha256, media_type, bytes);
      told.added += 1;
    }
  }
  return told;
}

function putMedia(db: PhoneDb, logbook_id: string, sha256: string, media_type: string, bytes: ArrayBuffer): Promise<void> {
  const row = { logbook_id, sha256, media_type, size_bytes: bytes.byteLength, state: "here" as const };
  return db.transaction(["media", "media_bytes"], (inside) => storeBytes(inside, row, bytes)).catch(refuse);
}

async function bytesOf(base64: string): Promise<ArrayBuffer | null> {
  try {
    return fromBase64(base64);
  } catch {
    return null;
  }
}
