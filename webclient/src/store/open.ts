// Opens the phone's database without ever waiting for ever: browsers have been seen not to answer at all.

import { signal } from "@preact/signals";

import { catchUp } from "./catchUp.ts";
import { openPhoneDb, type PhoneDb } from "./db.ts";
import { beginFreshLog } from "./freshLog.ts";
import { openDb } from "./place.ts";
import { troubleOf } from "./trouble.ts";

export const PATIENCE_MS = 3000;

/** slow: no answer yet, a second attempt runs. refused: this browser keeps nothing. moved_on: another tab
 * runs a newer version. broken: it was open and cannot be opened again. */
export type OpenState = "closed" | "opening" | "open" | "slow" | "refused" | "moved_on" | "broken";

export const openState = signal<OpenState>("closed");
/** Another tab holds an older version open and keeps this one waiting. */
export const blockedByTab = signal(false);
export const openError = signal<unknown>(null);

/** Opens the account's database; resolves when an attempt succeeded or the browser refused. */
export function openFor(accountId: string): Promise<void> {
  openState.value = "opening";
  return new Promise((resolve) => {
    void tryAgain(accountId).then(resolve);
    setTimeout(() => {
      if (openState.value !== "opening") return;
      openState.value = "slow";
      void tryAgain(accountId).then(resolve);
    }, PATIENCE_MS);
  });
}

/** A new request to the browser, for the rescue screen's button. */
export function tryAgain(accountId: string): Promise<void> {
  return attempt(accountId).catch(refuse);
}

export function close(): void {
  openDb.value?.close();
  openDb.value = null;
  openState.value = "closed";
}

async function attempt(accountId: string): Promise<void> {
  void beginFreshLog().catch(() => undefined); // what goes wrong there shows in the opening itself
  const db = await openPhoneDb(accountId, {
    blocked: () => void (blockedByTab.value = true),
    outdated: () => void (openState.value = "moved_on"),
    // the browser closed it by itself: storage was cleared, or the system took the connection away
    lost: () => openDb.value && void reopen(openDb.value).catch(() => undefined),
  });
  blockedByTab.value = false;
  await catchUp(db).catch((error) => console.error("older records could not be read anew", error)); // tried again next time
  if (openDb.value) return db.close(); // the other attempt was first
  openDb.value = db;
  openState.value = "open";
}

function refuse(error: unknown): void {
  if (openState.value === "open") return;
  openError.value = error;
  openState.value = "refused";
}

/** Runs `work`; if the connection was lost meanwhile, opens it once more and runs it once more. */
export async function withReopening<T>(db: PhoneDb, work: () => Promise<T>): Promise<T> {
  try {
    return await work();
  } catch (error) {
    if (troubleOf(error) !== "lost" || openState.value === "moved_on") throw error;
    await reopen(db);
    return work();
  }
}

async function reopen(db: PhoneDb): Promise<void> {
  if (openDb.value !== db) return;
  try {
    await db.reopen();
    openState.value = "open";
  } catch (error) {
    openError.value = error;
    openState.value = "broken";
    throw error;
  }
}
