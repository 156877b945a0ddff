// Stepping buttons for lengths: whole centimetres or whole inches, so that the number on the screen always
// moves by what the button says.

import type { System } from "../units/lengths.ts";

const CM_PER_INCH = 2.54;

/** The four buttons beside a length, in the unit shown: two steps down, two up. */
export const STEPS: Record<System, readonly [number, number]> = { metric: [5, 1], imperial: [3, 1] };

/** `value_cm` moved by `by` cm (metric) or inches (imperial), from `start_cm` where nothing is measured yet.
 * The first tap lands on the start itself; a value between two whole units steps to the next whole one.
 * Result in cm, to 0.1, kept within the limits. */
export function step(value_cm: number | null, by: number, units: System, start_cm: number, limits: readonly [number, number]): number {
  if (value_cm === null) return start_cm;
  const unit = units === "metric" ? 1 : CM_PER_INCH;
  const whole = snap(value_cm / unit, by);
  const next = Math.round(whole * unit * 10) / 10;
  return Math.min(limits[1], Math.max(limits[0], next));
}

/** The value moved by `by`; a part of a unit is dropped on the way, never added to the step. */
function snap(value: number, by: number): number {
  const near = Math.round(value);
  if (Math.abs(value - near) < 0.05) return near + by;
  return by > 0 ? Math.floor(value) + by : Math.ceil(value) + by;
}
