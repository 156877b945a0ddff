// When to send and fetch: at the start, when the app comes to the front, when the network seems to be back,
// after every save, now and then while open, and when the person asks. Nothing here believes
// navigator.onLine, and nothing needs the system to wake us: that is a kindness some phones do not have.

import { effect, untracked } from "@preact/signals";

import { isLocal, sessionStanding } from "../account/session.ts";
import { noteMistake } from "../health/mistakes.ts";
import { onSaved } from "../store/afterSave.ts";
import { getMeta, type PhoneDb, setMeta } from "../store/db.ts";
import { openDb } from "../store/place.ts";
import { backOff, LONGEST_MS } from "./backOff.ts";
import { followCounts } from "./counts.ts";
import { syncEverything } from "./everything.ts";
import { inOneTab } from "./oneTab.ts";
import { pullRulebooks } from "./rulebooks.ts";
import { note, type SyncResult, syncState } from "./state.ts";
import { makeWire } from "./wire.ts";

/** Taps come in bursts; one sync a moment after the last one carries them all. */
const AFTER_SAVE_MS = 1500;
const WHEN_QUIET_MS = 180_000;
const LAST_TIME = "last_sent_at_ms";

const wire = makeWire();
let running: Promise<SyncResult | null> | null = null;
let timer: ReturnType<typeof setTimeout> | undefined;
let failures = 0;
/** Something was saved since the last sync began; it may have come too late for it. */
let saved = false;

/** Starts sending and fetching for as long as the app is open. */
export function startSync(): void {
  effect(() => {
    const db = openDb.value;
    if (!db) return;
    untracked(() => void recallLastTime(db).catch(noteMistake).then(syncNow));
    return followCounts(db);
  });
  effect(() => {
    if (sessionStanding.value === "confirmed" && openDb.peek()) untracked(() => void syncNow());
  });
  onSaved(() => {
    saved = true;
    if (!running) plan(AFTER_SAVE_MS);
  });
  addEventListener("online", () => void syncNow());
  addEventListener("pageshow", () => void syncNow());
  document.addEventListener("visibilitychange", () => document.visibilityState === "visible" && void syncNow());
}

/** Sends and fetches now. Null: another tab is at it, or no store is open. */
export function syncNow(): Promise<SyncResult | null> {
  running ??= run().finally(() => (running = null));
  return running;
}

async function run(): Promise<SyncResult | null> {
  clearTimeout(timer);
  saved = false;
  const db = openDb.value;
  if (!db) return null;
  if (isLocal.value) return onlyRulebooks(db);
  const result = await inOneTab(db, () => syncEverything(db, wire));
  if (result === null) {
    plan(LONGEST_MS);
    return null;
  }
  failures = result.trouble ? failures + 1 : 0;
  note({ trouble: result.trouble, result, phase: "idle" });
  if (!result.trouble) await noteAllDone(db, result.finished_at_ms);
  plan(result.retry_after_ms ?? nextTry());
  return result;
}

// a logbook from before any account: nothing of it is sent; the rulebooks are public and fetched with no name
async function onlyRulebooks(db: PhoneDb): Promise<null> {
  await pullRulebooks(db, wire, "", Date.now()).catch(() => undefined);
  return null;
}

async function recallLastTime(db: PhoneDb): Promise<void> {
  note({ last_sent_at_ms: (await getMeta<number>(db, LAST_TIME)) ?? null, trouble: null, result: null });
}

async function noteAllDone(db: PhoneDb, last_sent_at_ms: number): Promise<void> {
  note({ last_sent_at_ms });
  await setMeta(db, LAST_TIME, last_sent_at_ms).catch((error) => console.error("the time of sending was not kept", error));
}

function nextTry(): number {
  if (saved && failures === 0) return AFTER_SAVE_MS;
  if (failures > 0 && syncState.value.trouble !== "signed_out") return backOff(failures - 1);
  return syncState.value.waiting + syncState.value.photos > 0 ? LONGEST_MS : WHEN_QUIET_MS;
}

function plan(wait_ms: number): void {
  clearTimeout(timer);
  timer = setTimeout(() => void syncNow(), wait_ms);
}
