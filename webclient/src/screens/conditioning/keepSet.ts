// The set in progress, on the disk from its start: what a reload, a killed page or a second tab finds. One set
// at a time in a logbook: its row is named after the logbook. It carries no `logbook_id`, by which the
// stopwatch finds its own runs in the same table.

import type { SetRun } from "../../conditioning/set.ts";
import type { RunRow } from "../../store/db.ts";
import type { Place } from "../../store/place.ts";

interface KeptSet extends RunRow {
  set: SetRun;
}

const rowId = ({ logbook_id }: Place): string => `intervals ${logbook_id}`;

export async function heldSet(place: Place): Promise<SetRun | null> {
  return ((await place.db.runs.get(rowId(place))) as KeptSet | undefined)?.set ?? null;
}

/** Keeps a set at its start. One that is already going (a second tap, another tab) is returned instead. */
export function keepSetStart(place: Place, run: SetRun): Promise<SetRun> {
  return place.db.transaction(["runs"], async (db) => {
    const other = await heldSet({ ...place, db });
    if (other !== null && other.ended_ms === null) return other;
    await put({ ...place, db }, run);
    return run;
  });
}

/** Keeps a set as it is after a tap. */
export async function keepSet(place: Place, run: SetRun): Promise<void> {
  await put(place, run);
}

/** Keeps what a set has seen since. It never writes over taps made in another tab, nor over a page that took
 * the set up after this one, and brings back no set that was let go. */
export function keepSetSeen(place: Place, run: SetRun, visible: boolean): Promise<void> {
  return place.db.transaction(["runs"], async (db) => {
    const before = await heldSet({ ...place, db });
    if (before === null || before.id !== run.id || before.changes > run.changes) return;
    const elsewhere = before.trace.last.page_id !== run.trace.last.page_id;
    if (elsewhere && !visible) return;
    await put({ ...place, db }, run);
  });
}

export async function letSetGo(place: Place): Promise<void> {
  await place.db.runs.delete(rowId(place));
}

async function put(place: Place, set: SetRun): Promise<void> {
  await place.db.runs.put({ id: rowId(place), set } satisfies KeptSet);
}
