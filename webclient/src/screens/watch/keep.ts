// The run in progress, on the disk from the moment of its start: what a reload, a killed page or a second
// tab finds. One run at a time in a logbook, whatever is tapped where.

import type { Run } from "../../pace/run.ts";
import { findRecord } from "../../store/read.ts";
import type { RunRow } from "../../store/db.ts";
import type { Place } from "../../store/place.ts";

export interface KeptRun extends RunRow {
  id: string;
  logbook_id: string;
  run: Run;
  /** Stopped, but perhaps not yet saved as a timed canter. */
  stopped: boolean;
}

function kept(place: Place, run: Run, stopped = false): KeptRun {
  return { id: run.id, logbook_id: place.logbook_id, run, stopped };
}

async function found(place: Place): Promise<KeptRun | undefined> {
  const rows = (await place.db.runs.toArray()) as KeptRun[];
  return rows.find((row) => row.logbook_id === place.logbook_id);
}

/** Keeps a run at its start. If one is already going (another tab, a second tap), that one is returned. */
export function keepStart(place: Place, run: Run): Promise<Run> {
  return place.db.transaction(["runs"], async (db) => {
    const other = await found({ ...place, db });
    if (other !== undefined && !other.stopped) return other.run;
    await db.runs.put(kept(place, run));
    return run;
  });
}

/**
 * Keeps what a running run has seen since. A page that is not looked at never writes over one that took the
 * run up after it, and nothing brings back a run that was ended elsewhere.
 */
export function keepSeen(place: Place, run: Run, visible: boolean): Promise<void> {
  return place.db.transaction(["runs"], async (db) => {
    const before = (await db.runs.get(run.id)) as KeptRun | undefined;
    if (before === undefined || before.stopped) return;
    const elsewhere = before.run.trace.last.page_id !== run.trace.last.page_id;
    if (elsewhere && !visible) return;
    await db.runs.put(kept(place, run));
  });
}

export async function keepStopped(place: Place, run: Run): Promise<void> {
  await place.db.runs.put(kept(place, run, true));
}

export async function keepAgain(place: Place, run: Run): Promise<void> {
  await place.db.runs.put(kept(place, run));
}

export async function letGo(place: Place, run_id: string): Promise<void> {
  await place.db.runs.delete(run_id);
}

/** The run this phone still holds, if any. One that was saved before its row could go is cleared away. */
export async function heldRun(place: Place): Promise<KeptRun | null> {
  const row = await found(place);
  if (row === undefined) return null;
  if ((await findRecord(place, row.id)) === undefined) return row;
  await letGo(place, row.id);
  return null;
}
