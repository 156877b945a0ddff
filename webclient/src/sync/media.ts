// Sends photos and voice notes in pieces, one after the other, when all records are sent. A cut costs one piece:
// the server says how far it got. One that it will not have waits with its reason and holds up nothing.

import type { MediaRow, PhoneDb } from "../store/db.ts";
import { recall } from "../store/little.ts";
import { offerMediaSender } from "./mediaSender.ts";
import { makeMediaWire, mediaPath, type MediaWire, type Received } from "./mediaWire.ts";
import { waitingMedia } from "./mediaWaiting.ts";
import { stopFor } from "./stop.ts";
import type { Reply } from "./wire.ts";

export const PIECE_BYTES = 256 * 1024;
/** The person sends photos by a button, when the phone is on Wi-Fi: no phone tells a page what it is on. */
export const BY_HAND = "photos_by_hand";

const REFUSED_AGAIN_MS = 6 * 3_600_000;
/** More turns than pieces: a server that keeps moving its offset must not hold us for ever. */
const MOST_TURNS = 30;

type Failed = Exclude<Reply<unknown>, { kind: "ok" }>;

let asked = false;

/** The next sync sends photos even where they go by hand, and tries refused ones again. */
export function askToSend(): void {
  asked = true;
}

/** Sends all that wait; ends early with SyncStop. `tell`: how many of how many. */
export async function sendMedia(db: PhoneDb, tell: (done: number, total: number) => void, wire: MediaWire = makeMediaWire(), now = Date.now()): Promise<void> {
  const by_hand = recall(BY_HAND) === true;
  if (by_hand && !asked) return;
  const rows = (await waitingMedia(db)).filter((row) => asked || (row.retry_at_ms ?? 0) <= now);
  for (const [done, row] of rows.entries()) {
    tell(done, rows.length);
    await sendOne(db, wire, row, now);
  }
  asked = false;
}

async function sendOne(db: PhoneDb, wire: MediaWire, row: MediaRow, now: number): Promise<void> {
  const kept = await db.media_bytes.get([row.logbook_id, row.sha256]);
  const refusal = kept ? await upload(wire, row, kept.bytes) : "lost";
  const { refusal: _, retry_at_ms: __, ...plain } = row;
  await db.media.put(refusal ? { ...plain, refusal, retry_at_ms: now + REFUSED_AGAIN_MS } : { ...plain, state: "sent" });
}

/** Null when the server has all of it, else the code with which it was refused. */
async function upload(wire: MediaWire, row: MediaRow, bytes: ArrayBuffer): Promise<string | null> {
  const path = mediaPath(row);
  let reply: Reply<Received> = await wire.ask(path);
  let damaged = 0; // on the way or on the server's disk: once from the start again, then it is this phone's own
  for (let turn = 0; turn < MOST_TURNS; turn++) {
    if (reply.kind === "ok" && reply.data.complete) return null;
    const code = reply.kind === "ok" ? null : codeOf(reply);
    if (code && code !== "wrong_offset" && (code !== "wrong_digest" || damaged++)) return code;
    const at = code === "wrong_digest" ? 0 : reachedIn(reply);
    reply = await wire.send(path, bytes.slice(at, at + PIECE_BYTES), at, bytes.byteLength);
  }
  return "wrong_offset";
}

function reachedIn(reply: Reply<Received>): number {
  if (reply.kind === "ok") return reply.data.received_bytes;
  return reply.kind === "failed" ? Number(reply.error.details[0]?.received_bytes) || 0 : 0;
}

/** What is about this file alone; everything else ends the sync. */
function codeOf(reply: Failed): string {
  if (reply.kind === "offline") throw stopFor(reply);
  if ([404, 409, 413, 415, 422].includes(reply.status) || reply.error.code === "not_allowed") return reply.error.code || "not_found";
  throw stopFor(reply);
}

offerMediaSender(sendMedia);
