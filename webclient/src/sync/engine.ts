// One sync of one logbook, start to end: send, fetch, check by counting. docs/protocol.md tells the same steps.

import type { SyncContext } from "./context.ts";
import { countsAgree, startOver } from "./cursor.ts";
import { pullAll } from "./pull.ts";
import { pushAll } from "./push.ts";
import { LogChanged, SyncStop } from "./stop.ts";

/** Sends and fetches everything of the context's logbook; `context.tally` says how much. Throws SyncStop. */
export async function syncLogbook(context: SyncContext): Promise<void> {
  await sendAndFetch(context);
  if (await countsAgree(context.db, context.logbook_id)) return;
  // phone and server differ, whoever is at fault: nothing is dropped, all is sent and fetched again
  await startOver(context.db, context.logbook_id, null);
  await sendAndFetch(context);
  if (!(await countsAgree(context.db, context.logbook_id))) throw new SyncStop("mismatch");
}

async function sendAndFetch(context: SyncContext): Promise<void> {
  try {
    await once(context);
  } catch (error) {
    if (!(error instanceof LogChanged)) throw error;
    await startOver(context.db, context.logbook_id, error.log_id);
    await onceMore(context);
  }
}

async function once(context: SyncContext): Promise<void> {
  await pushAll(context);
  await pullAll(context);
}

// a server that renews its log id twice within one sync will be asked again later
async function onceMore(context: SyncContext): Promise<void> {
  try {
    await once(context);
  } catch (error) {
    throw error instanceof LogChanged ? new SyncStop("server_trouble") : error;
  }
}
