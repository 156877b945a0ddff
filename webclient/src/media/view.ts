// A photo or voice note to look at or listen to: from this phone, else fetched once and kept.

import { useEffect, useState } from "preact/hooks";

import { isLocal } from "../account/session.ts";
import type { Bodies } from "../entries/bodies.ts";
import type { RecordRow } from "../store/db.ts";
import { useLive } from "../store/live.ts";
import { here, type Place } from "../store/place.ts";
import { findEntries, findRecords } from "../store/read.ts";
import { makeMediaWire, mediaPath } from "../sync/mediaWire.ts";
import { MEDIA_KINDS } from "../sync/mediaWaiting.ts";
import { syncState } from "../sync/state.ts";
import { digestOf, storeBytes } from "./keep.ts";

export type MediaBody = Bodies["photo"] | Bodies["voice_note"];
/** offline: comes with signal. not_here_yet: the phone it was made with has not sent it. */
export type MediaTrouble = "offline" | "not_here_yet";

/** Photos and voice notes about any of these records, oldest first. */
export function useMediaAbout(ids: string[]): RecordRow[] {
  const find = async () => (await Promise.all(ids.flatMap((about_id) => MEDIA_KINDS.map((kind) => findRecords(here(), kind, { about_id }))))).flat();
  return useLive(find, [ids]) ?? [];
}

/** Who took or said it, and when: a caption or its words may be somebody else's, later. */
export function useMaker(row: RecordRow): { name: string; at: string } {
  const first = useLive(async () => (await findEntries(here(), row.record_id)).find(({ supersedes }) => !supersedes.length), [row.record_id]);
  return { name: (first ?? row).author_name ?? "", at: (first ?? row).recorded_at };
}

/** The address to show it by, or why there is none; neither while it is looked for. */
export function useMedia({ media_sha256, media_type }: MediaBody): { url?: string; trouble?: MediaTrouble } {
  const [found, setFound] = useState<{ url?: string; trouble?: MediaTrouble }>({});
  const synced = syncState.value.result?.finished_at_ms;
  useEffect(() => {
    if (found.url) return;
    void bytesOf(here(), media_sha256, media_type).then((got) => setFound(typeof got === "string" ? { trouble: got } : { url: URL.createObjectURL(new Blob([got], { type: media_type })) }));
  }, [media_sha256, synced]);
  useEffect(() => () => void (found.url && URL.revokeObjectURL(found.url)), [found.url]);
  return found;
}

async function bytesOf({ db, logbook_id }: Place, sha256: string, media_type: string): Promise<ArrayBuffer | MediaTrouble> {
  const kept = await db.media_bytes.get([logbook_id, sha256]);
  if (kept) return kept.bytes;
  if (isLocal.value) return "offline";
  const reply = await makeMediaWire().fetch(mediaPath({ logbook_id, sha256 }));
  if (reply.kind !== "ok") return reply.kind === "failed" && reply.status === 404 ? "not_here_yet" : "offline";
  const bytes = reply.data;
  if ((await digestOf(bytes)) !== sha256) return "offline";
  // no room to keep it is no reason not to show it
  await db.transaction(["media", "media_bytes"], (inside) => storeBytes(inside, { logbook_id, sha256, media_type, size_bytes: bytes.byteLength, state: "sent" }, bytes)).catch(() => undefined);
  return bytes;
}
