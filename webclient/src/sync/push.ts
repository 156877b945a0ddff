// Sends what has no number yet, in batches, oldest first. One bad entry never holds up the others.

import type { EntryRow } from "../store/db.ts";
import { type Answer, applyAnswers, putOff, refusalOf, refuseAlone } from "./answers.ts";
import { backOff } from "./backOff.ts";
import { countWaiting, nextBatch, toWire } from "./batch.ts";
import { entriesPath, PROTOCOL, type SyncContext } from "./context.ts";
import { readCursor } from "./cursor.ts";
import { dataOf, LogChanged, SyncStop, stopFor } from "./stop.ts";
import type { Reply } from "./wire.ts";

interface Pushed {
  log_id: string;
  last_number: number;
  answers: Answer[];
  server_time: string;
}

type Failed = Extract<Reply<unknown>, { kind: "failed" }>;

/** Requests that may fail while one bad entry is searched for, before the server itself is at fault. */
const MOST_FAILURES = 24;

/** Sends everything that waits; ends early with SyncStop or LogChanged. */
export async function pushAll(context: SyncContext): Promise<void> {
  const total = await countWaiting(context);
  const search = { failures: 0 };
  let done = 0;
  for (let batch = await nextBatch(context, ""); batch.length; batch = await nextBatch(context, batch.at(-1)!.id)) {
    context.progress("sending", done, total);
    await pushBatch(context, batch, done + batch.length < total, search);
    done += batch.length;
  }
}

async function pushBatch(context: SyncContext, batch: EntryRow[], more: boolean, search: { failures: number }): Promise<void> {
  const reply = await post(context, batch, more);
  if (reply.kind === "ok") return applyAnswers(context, batch, answersOf(reply.data), reply.data.log_id);
  if (reply.kind === "offline") throw stopFor(reply);
  if (reply.error.code === "log_changed") throw new LogChanged(String(reply.error.details[0]?.log_id ?? "") || null);
  if (!isAboutContent(reply)) throw stopFor(reply);
  if (++search.failures > MOST_FAILURES) throw new SyncStop("server_trouble");
  if (batch.length === 1) return setAside(context, batch[0]!, reply);
  const half = Math.ceil(batch.length / 2);
  await pushBatch(context, batch.slice(0, half), true, search);
  await pushBatch(context, batch.slice(half), more, search);
}

async function post(context: SyncContext, batch: EntryRow[], more: boolean): Promise<Reply<Pushed>> {
  const { log_id } = await readCursor(context.db, context.logbook_id);
  return context.wire.post<Pushed>(entriesPath(context), {
    protocol: PROTOCOL,
    app: context.app,
    device: context.device,
    sent_at: new Date(context.now()).toISOString(),
    log_id,
    account: context.account_id ?? null,
    ...(more && { more }),
    entries: batch.map(toWire),
  });
}

function answersOf(pushed: Pushed): Answer[] {
  if (!Array.isArray(pushed.answers)) dataOf({ kind: "offline" });
  return pushed.answers;
}

// these may be the fault of one entry of the batch; 503 and the like are the server's own
function isAboutContent({ status, error }: Failed): boolean {
  if (error.code === "newer_protocol") return false;
  return status === 400 || status === 413 || status === 422 || status === 500;
}

function setAside(context: SyncContext, row: EntryRow, reply: Failed): Promise<void> {
  if (reply.status === 500) return putOff(context, row, backOff(row.failures ?? 0));
  return refuseAlone(context, row, refusalOf(reply.error));
}
