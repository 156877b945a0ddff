// An interval set written down afterwards: what is typed, and the body it makes.

import type { IntervalSetInput } from "../entries/bodies.ts";
import { civilDate } from "../entries/entry.ts";

/** Minutes and counts as they stand on the steppers; `speed_mpm` is the one set out, null where nobody said. */
export interface Numbers {
  canters: number;
  work_min: number;
  walk_min: number;
  speed_mpm: number | null;
}

export interface Remembered extends Numbers {
  horse_id: string | null;
  /** The civil day it was ridden. */
  date: string;
  note: string;
}

const EARLIEST = "1990-01-01";

export const today = (): string => civilDate(new Date());

export type Trouble = "need_horse" | "need_date";

/** What is lacking; none when it can be saved. `now`: today's civil day. */
export function troubles({ horse_id, date }: Remembered, now = today()): Trouble[] {
  const lacking: Trouble[] = [];
  if (horse_id === null) lacking.push("need_horse");
  if (!/^\d{4}-\d{2}-\d{2}$/.test(date) || date < EARLIEST || date > now) lacking.push("need_date");
  return lacking;
}

/** Canters alike with walks between, none after the last. */
export function rememberedBody({ canters, work_min, walk_min, speed_mpm, note }: Remembered, outing_id: string): IntervalSetInput {
  const intervals = Array.from({ length: canters }, (_, n) => ({ work_s: 60 * work_min, rest_s: n < canters - 1 ? 60 * walk_min : 0, speed_mpm }));
  return { outing_id, intervals, from_memory: true, note: note.trim() || null };
}
