// The arithmetic of practising a speed: how long a hundred metres takes, how far a time carries.

import { aboveZero } from "./badInput.ts";

/** Seconds that 100 m take at a speed in m/min. */
export function secondsPer100m(speedMpm: number): number {
  return 6000 / aboveZero("speed_mpm", speedMpm);
}

/** Seconds that a stretch in m takes at a speed in m/min. */
export function secondsFor(distanceM: number, speedMpm: number): number {
  return (60 * aboveZero("distance_m", distanceM)) / aboveZero("speed_mpm", speedMpm);
}

/** Metres ridden after so many seconds at a speed in m/min. */
export function metresAfter(seconds: number, speedMpm: number): number {
  return (aboveZero("speed_mpm", speedMpm) * seconds) / 60;
}

/** Where a horse on the speed is: so many metres after the last mark it has passed, or before the end. */
export interface Whereabouts {
  /** From the first flag, in m. */
  metres: number;
  /** The nearest mark: the first flag (0), a flag on the way (1, 2 …), or the second flag at the end (null). */
  flag: number | null;
  /** Metres beyond that mark; below zero before it. */
  beyond_m: number;
}

/** Where she should be `seconds` after the first flag at a speed in m/min, against the nearest of the flags. */
export function whereabouts(seconds: number, speedMpm: number, distanceM: number, flagsM: readonly number[] = []): Whereabouts {
  const metres = metresAfter(seconds, speedMpm);
  const marks = [0, ...flagsM, distanceM].map((at, n) => ({ flag: n > flagsM.length ? null : n, beyond_m: metres - at }));
  const nearest = marks.reduce((best, mark) => (Math.abs(mark.beyond_m) < Math.abs(best.beyond_m) ? mark : best));
  return { metres, ...nearest };
}
