// Moves this phone's own logbook under an account: the same entries with the same ids, waiting to be sent. The
// copy here goes only when the server has numbered every one of them; killed anywhere, doing it again is right.

import { takeIn } from "../imports/takeIn.ts";
import { storeBytes } from "../media/keep.ts";
import { getMeta, openPhoneDb, type PhoneDb, setMeta } from "../store/db.ts";
import type { Place } from "../store/place.ts";
import { waitingMedia } from "../sync/mediaWaiting.ts";
import { localBegun, removeLocal } from "./local.ts";
import { LOCAL } from "./session.ts";

/** Where it is being moved to: fixed by the first try, or one entry could end up in two logbooks. */
export interface Target {
  account_id: string;
  logbook_id: string;
}

export interface Progress {
  total: number;
  /** Of them: with a number from the server, in the logbook they are moved to. */
  numbered: number;
  /** Photos and voice notes the server does not have yet. */
  media_left: number;
  horses: string[];
  days: string[];
  target: Target | null;
}

const TARGET = "moving_to";

/** How it stands, or null where there is nothing to keep. */
export function progress(db: PhoneDb): Promise<Progress | null> {
  return withLocal(async (local) => {
    const target = (await getMeta<Target>(local, TARGET)) ?? null;
    const entries = await local.entries.toArray();
    const records = await local.records.toArray();
    const there = target ? await db.entries.bulkGet(entries.map(({ id }) => [target.logbook_id, id] as [string, string])) : [];
    const media = await waitingMedia(local); // one taken back is copied too, but waits for nothing
    const media_there = target ? await db.media.bulkGet(media.map(({ sha256 }) => [target.logbook_id, sha256] as [string, string])) : [];
    return {
      media_left: media.length - media_there.filter((row) => row?.state === "sent").length,
      total: entries.length, numbered: there.filter((row) => row?.state === "sent").length, target,
      horses: records.flatMap((row) => (row.shelf === "horse" ? [String(row.body!.name)] : [])),
      days: records.flatMap((row) => (row.shelf === "outing" ? [row.day] : [])).sort(),
    };
  });
}

/** Copies everything into the logbook at `place`, which the sync then sends. */
export async function keepUnder(place: Place, tell: (done: number, total: number) => void): Promise<void> {
  await withLocal(async (local) => {
    await setMeta(local, TARGET, { account_id: place.me.id, logbook_id: place.logbook_id } satisfies Target);
    await takeIn(place, await local.entries.toArray(), tell);
    await copyMedia(local, place);
    await place.db.drafts.bulkPut(await local.drafts.toArray());
    await place.db.runs.bulkPut(await local.runs.toArray());
  });
}

async function copyMedia(local: PhoneDb, { db, logbook_id }: Place): Promise<void> {
  for (const row of await local.media.toArray()) {
    const kept = await local.media_bytes.get([row.logbook_id, row.sha256]);
    if (kept) await db.transaction(["media", "media_bytes"], (inside) => storeBytes(inside, { ...row, logbook_id }, kept.bytes));
  }
}

/** Removes the copy once all of it is numbered under the account; whether it did. */
export async function clearWhenSent(db: PhoneDb): Promise<number | null> {
  const now = await progress(db);
  if (!now || (now.total > 0 && !now.target) || now.numbered < now.total || now.media_left > 0) return null;
  await removeLocal();
  return now.total;
}

async function withLocal<T>(work: (local: PhoneDb) => Promise<T>): Promise<T | null> {
  if (!localBegun.value) return null;
  const local = await openPhoneDb(LOCAL);
  try {
    return await work(local);
  } finally {
    local.close();
  }
}
