// One sync of all logbooks of the account: who we are first, then each logbook, the one on screen first.

import { logbooks, type LogbookInfo, session, sessionStanding, takeSession, type Session } from "../account/session.ts";
import type { PhoneDb } from "../store/db.ts";
import { logbookId } from "../store/place.ts";
import { APP_VERSION } from "../update/version.ts";
import { emptyTally, PROTOCOL, type SyncContext } from "./context.ts";
import { deviceOf } from "./device.ts";
import { syncLogbook } from "./engine.ts";
import { mediaSender } from "./mediaSender.ts";
import { waitingMedia } from "./mediaWaiting.ts";
import { pullRulebooks } from "./rulebooks.ts";
import { pullStandings } from "./standings.ts";
import { note, type SyncResult, type SyncTrouble } from "./state.ts";
import { dataOf, SyncStop } from "./stop.ts";
import type { Wire } from "./wire.ts";

const ASK_AGAIN_AFTER_MS = 600_000;

let asked_at_ms = 0;

/** Sends and fetches everything. Never throws: the result says what was done and what stood in the way. */
export async function syncEverything(db: PhoneDb, wire: Wire): Promise<SyncResult & { retry_after_ms: number | null }> {
  const tally = emptyTally();
  let stop: SyncStop | null = null;
  try {
    await confirmSession(wire);
    const device = await deviceOf(db);
    for (const logbook of inOrder()) {
      const logbookStop = await oneLogbook({ db, wire, logbook_id: logbook.id, account_id: session.value!.account!.id, device, app: APP_VERSION, tally, progress, now: Date.now });
      stop ??= logbookStop;
    }
    await pullRulebooks(db, wire, session.value?.version ?? "", Date.now());
    // last, for records outrank photos
    if ((await waitingMedia(db)).length) await (await mediaSender())?.(db, (done, total) => note({ phase: "photos", done, total }));
  } catch (error) {
    stop = asStop(error);
  }
  if (stop?.trouble === "signed_out") sessionStanding.value = "ended";
  note({ phase: "idle", done: 0, total: 0 });
  return { ...tally, trouble: stop?.trouble ?? null, finished_at_ms: Date.now(), retry_after_ms: stop?.retry_after_ms ?? null };
}

/** Asks the server who we are: at the start, then every ten minutes, and whenever it did not know us. */
export async function confirmSession(wire: Wire): Promise<void> {
  const fresh = sessionStanding.value === "confirmed" && Date.now() - asked_at_ms < ASK_AGAIN_AFTER_MS;
  if (fresh) return;
  const told = dataOf(await wire.get<Session>("/api/session"));
  const other = told.account && session.value?.account && told.account.id !== session.value.account.id;
  if (!told.account || other) throw new SyncStop("signed_out");
  takeSession(told);
  asked_at_ms = Date.now();
}

// a logbook we lost access to must not keep the others from being sent
async function oneLogbook(context: SyncContext): Promise<SyncStop | null> {
  try {
    await syncLogbook(context);
    if ((session.value?.protocol ?? PROTOCOL) <= PROTOCOL) await pullStandings(context);
    return null;
  } catch (error) {
    const stop = asStop(error);
    if (stop.trouble === "no_access" || stop.trouble === "mismatch") return stop;
    throw stop;
  }
}

function inOrder(): LogbookInfo[] {
  return [...logbooks.value].sort((one, other) => Number(other.id === logbookId.value) - Number(one.id === logbookId.value));
}

function progress(phase: "sending" | "fetching", done: number, total: number): void {
  note({ phase, done, total });
}

function asStop(error: unknown): SyncStop {
  if (error instanceof SyncStop) return error;
  console.error("sync failed on this phone", error);
  return new SyncStop("phone_trouble" satisfies SyncTrouble);
}
