// The next entries to send: oldest first, as many as one request takes.

import type { Entry } from "../entries/entry.ts";
import type { EntryRow } from "../store/db.ts";
import { startingWith } from "../store/table.ts";
import type { SyncContext } from "./context.ts";

export const MOST_ENTRIES = 500;
export const MOST_BYTES = 1024 * 1024;

/** Unnumbered entries with ids above `after`, without those that wait for a later try. */
export async function nextBatch(context: SyncContext, after: string): Promise<EntryRow[]> {
  const { db, logbook_id, now } = context;
  const range = IDBKeyRange.bound([logbook_id, "here", after], [logbook_id, "here", []], true);
  const rows = await db.entries.find("state", range, { most: MOST_ENTRIES });
  const due = rows.filter((row) => (row.retry_at_ms ?? 0) <= now());
  // a whole page that is not yet due must not hide what comes behind it
  if (!due.length && rows.length) return nextBatch(context, rows.at(-1)!.id);
  return due.slice(0, howManyFit(due));
}

export function countWaiting({ db, logbook_id }: SyncContext): Promise<number> {
  return db.entries.countOf("state", startingWith(logbook_id, "here"));
}

/** An entry as it goes over the wire. What came from the server goes back with its receipt. */
export function toWire(row: EntryRow): Entry {
  const { logbook_id: _, state: __, refusal: ___, failures: ____, retry_at_ms: _____, number: ______, ...entry } = row;
  if (entry.receipt) return entry;
  const { author: _a, author_name: _n, device: _d, skew_ms: _s, received_at: _r, receipt: _p, ...mine } = entry;
  return mine;
}

function howManyFit(rows: EntryRow[]): number {
  let bytes = 0;
  for (let fitting = 0; fitting < rows.length; fitting++) {
    bytes += bytesOf(toWire(rows[fitting]!));
    if (bytes > MOST_BYTES) return Math.max(1, fitting);
  }
  return rows.length;
}

const encoder = new TextEncoder();

function bytesOf(entry: Entry): number {
  return encoder.encode(JSON.stringify(entry)).length + 1;
}
