// Whether the browser promised to keep what is stored here, and how much room there is.

import { type PhoneDb, getMeta, setMeta } from "./db.ts";

/** promised, not_promised, or unknown where the browser has no such promise to give. */
export type Promised = "promised" | "not_promised" | "unknown";

const ASKED = "persist_asked";

/** Asks once, after the first record; some browsers ask the person. The answer is shown in settings. */
export async function askToPersistOnce(db: PhoneDb): Promise<void> {
  if (!navigator.storage?.persist || (await getMeta(db, ASKED))) return;
  await setMeta(db, ASKED, true);
  await navigator.storage.persist();
}

export async function promised(): Promise<Promised> {
  if (!navigator.storage?.persisted) return "unknown";
  return (await navigator.storage.persisted()) ? "promised" : "not_promised";
}

/** Asks again, because the person said so. */
export async function askToPersist(): Promise<Promised> {
  if (!navigator.storage?.persist) return "unknown";
  return (await navigator.storage.persist()) ? "promised" : "not_promised";
}

export interface Room {
  used_bytes: number;
  of_bytes: number;
}

export async function room(): Promise<Room | null> {
  const estimate = await navigator.storage?.estimate?.().catch(() => null);
  if (!estimate || estimate.quota === undefined) return null;
  return { used_bytes: estimate.usage ?? 0, of_bytes: estimate.quota };
}
