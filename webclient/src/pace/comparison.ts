// This canter among the last ones: what a picture of them shows and what a sentence says of the step since
// the one before.

import type { TimedCanter } from "../entries/bodies.ts";
import { inOrderMade, madeAt } from "../recording/made.ts";
import { differ, type Pace, speed } from "./speed.ts";

/** A canter of the logbook; its record id carries the moment it was made, which orders it. */
export interface Ridden {
  record_id: string;
  recorded_at: string;
  local_date: string;
  body: TimedCanter;
}

export interface Compared {
  ridden: Ridden;
  pace: Pace;
  current: boolean;
}

export const SHOWN = 8;

function comparable(one: TimedCanter, other: TimedCanter): boolean {
  if (one.track_id !== null || other.track_id !== null) return one.track_id === other.track_id;
  return one.distance_m === other.distance_m;
}

/** The canters over the same stretch up to this one, oldest first, this one last. */
export function lastCanters(current: Ridden, all: Ridden[], most = SHOWN): Compared[] {
  const before = all.filter(
    (one) => one.record_id !== current.record_id && madeAt(one) <= madeAt(current) && comparable(one.body, current.body),
  );
  return [...inOrderMade(before), current]
    .slice(-most)
    .map((ridden) => ({ ridden, pace: speed(ridden.body), current: ridden === current }));
}

export type Step = "first" | "same" | "faster" | "slower";

/** The step since the canter before: same where the watch cannot tell the two apart. */
export function stepSince(compared: Compared[]): { step: Step; by_mpm: number } {
  const [before, now] = compared.slice(-2);
  if (before === undefined || now === undefined) return { step: "first", by_mpm: 0 };
  const by_mpm = now.pace.speed_mpm - before.pace.speed_mpm;
  if (!differ(now.pace, before.pace, true)) return { step: "same", by_mpm };
  return { step: by_mpm > 0 ? "faster" : "slower", by_mpm };
}
