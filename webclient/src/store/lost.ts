// Notices when the browser has emptied the storage. An empty store is never taken for an empty logbook: what
// was sent is fetched again, nothing is ever deleted on the server because it is missing here.

import { signal } from "@preact/signals";
import { deleteDB } from "idb";

import { getMeta, nameFor, type PhoneDb, setMeta } from "./db.ts";
import { recall, remember } from "./little.ts";
import { removeSpares } from "./spare.ts";

/** True when this browser held a store of this account before and it is gone. */
export const lostStore = signal(false);

const MADE = "made_at";

/** `before`: an older sign of life, such as a session that lived on in a cookie. Marks the store as ours. */
export async function lookForLoss(db: PhoneDb, accountId: string, before: boolean): Promise<void> {
  const known = recall<string[]>("stores") ?? [];
  if (!(await getMeta(db, MADE))) {
    lostStore.value = (before || known.includes(accountId)) && (await db.entries.count()) === 0;
    await setMeta(db, MADE, new Date().toISOString());
  }
  if (!known.includes(accountId)) remember("stores", [...known, accountId]);
}

/** Removes the store because the person asked for it: not a loss. */
export async function removeStore(accountId: string): Promise<void> {
  remember("stores", (recall<string[]>("stores") ?? []).filter((id) => id !== accountId));
  await deleteDB(nameFor(accountId));
  await removeSpares(nameFor(accountId));
}
