// The points of a run as they come, on the disk from the first on: one row a minute, under the run's id. Two tabs,
// and two lives of a page, have rows of their own.

import { bodyOf, type Point } from "../../location/points.ts";
import { save } from "../../store/book.ts";
import type { Place } from "../../store/place.ts";
import { findRecord } from "../../store/read.ts";

export interface Kept {
  run_id: string;
  /** The record that the points will be. */
  trace_id: string;
  outing_id: string;
  logbook_id: string;
  points: Point[];
}

const keyOf = (...parts: (string | number)[]): string => ["trace", ...parts].join(" ");
const below = (start: string): IDBKeyRange => IDBKeyRange.bound(start, `${start}\uffff`);

export function keep({ db }: Place, kept: Kept, life: number, row: number): Promise<void> {
  return db.meta.put({ key: keyOf(kept.run_id, life, String(row).padStart(5, "0")), value: kept });
}

/** Of one run, or of all. */
export async function keptOf({ db }: Place, run_id?: string): Promise<Kept[]> {
  const rows = await db.meta.find(null, below(run_id === undefined ? keyOf("") : keyOf(run_id, "")));
  return rows.map((row) => row.value as Kept);
}

/** All points in the order of time; where two tabs saw the same moment it counts once. */
export function merged(kept: Kept[]): Point[] {
  const all = kept.flatMap((row) => row.points).sort((one, other) => one.at_ms! - other.at_ms!);
  return all.filter((point, n) => n === 0 || point.at_ms! > all[n - 1]!.at_ms!);
}

/** Makes the trace of a saved canter from what was kept; doing it twice makes one record. */
export async function finish(place: Place, run_id: string): Promise<Kept[]> {
  const kept = await keptOf(place, run_id);
  const points = merged(kept);
  if (points.length > 1) {
    const { outing_id, trace_id } = kept[0]!;
    await save("trace", bodyOf(points, { outing_id, canter_id: run_id, source: "phone" }), trace_id);
  }
  await place.db.meta.deleteRange(below(keyOf(run_id, "")));
  return kept;
}

/** Looks after what an earlier life of the page left: saved canters get their trace, runs thrown away lose theirs. */
export async function tidy(place: Place): Promise<void> {
  const mine = (await keptOf(place)).filter((row) => row.logbook_id === place.logbook_id);
  for (const run_id of new Set(mine.map((row) => row.run_id))) {
    const canter = await findRecord(place, run_id);
    if (canter?.shelf === "timed_canter") await finish(place, run_id);
    else if ((await place.db.runs.get(run_id)) === undefined) await place.db.meta.deleteRange(below(keyOf(run_id, "")));
  }
}
