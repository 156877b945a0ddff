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
