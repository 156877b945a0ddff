// What helps somebody who helps: versions, counts, room, clocks. No names, no notes, nothing of the records.

import { isLocal, logbooks, session, sessionStanding } from "../account/session.ts";
import { getMeta, type PhoneDb } from "../store/db.ts";
import { openError, openState } from "../store/open.ts";
import { promised, room } from "../store/persist.ts";
import { openDb } from "../store/place.ts";
import { syncState } from "../sync/state.ts";
import { APP_VERSION, BUILD } from "../update/version.ts";
import { mistakes } from "./mistakes.ts";

const STORE_PATIENCE_MS = 2000;

export async function diagnose(): Promise<Record<string, unknown>> {
  const { phase, waiting, oldest_waiting, needs_you, held, last_sent_at_ms, trouble } = syncState.value;
  return {
    version: APP_VERSION,
    build: BUILD,
    server_version: session.value?.version ?? null,
    browser: navigator.userAgent,
    language: navigator.language,
    standalone: matchMedia("(display-mode: standalone)").matches,
    session: isLocal.value ? "none" : sessionStanding.value,
    clock: { now: new Date().toISOString(), utc_offset_min: -new Date().getTimezoneOffset(), skew_ms: await within((db) => getMeta(db, "skew_ms")) },
    counts: await within(counts),
    logbooks: logbooks.value.length,
    store: openState.value,
    store_error: openError.value ? String(openError.value).slice(0, 300) : null,
    storage: await room(),
    storage_promise: await promised(),
    sync: { phase, waiting, oldest_waiting, needs_you, held, last_sent_at_ms, trouble },
    worker: navigator.serviceWorker?.controller ? "controls" : "none",
    web_locks: "locks" in navigator,
    mistakes: mistakes(),
  };
}

async function counts({ entries, records, drafts, runs }: PhoneDb): Promise<object> {
  return { entries: await entries.count(), records: await records.count(), drafts: await drafts.count(), runs: await runs.count() };
}

// the store may be the very thing that hangs
async function within<T>(ask: (db: PhoneDb) => Promise<T>): Promise<T | null> {
  const db = openDb.value;
  if (!db) return null;
  const late = new Promise<null>((resolve) => setTimeout(resolve, STORE_PATIENCE_MS, null));
  return Promise.race([ask(db).catch(() => null), late]);
}
