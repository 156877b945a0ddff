// Speed over a measured stretch, and how well a watch and a wheel can know it: the twin of
// server/fieldtally/trade/pace.py, which names the sources and says which numbers are assumptions. Both run
// fixtures/contract/pace.json. Every "±" is one standard uncertainty (JCGM 100:2008); two values count as
// different from two standard uncertainties on.

import type { MeasuredBy } from "../entries/bodies.ts";
import { aboveZero, BadInput, notBelowZero } from "./badInput.ts";

/** Standard deviation in s of a hand-timed interval: Faux and Godolphin, Am. J. Phys. 87(2):110 (2019). */
export const HAND_TIMING_SD_S = 0.1;

/** Relative standard uncertainty of a distance by how it was measured: assumptions, no published source. */
export const RELATIVE_U: Record<MeasuredBy, number> = { wheel: 0.01, known: 0.005, tape: 0.002, paces: 0.03, phone: 0.02 };

export const TOLD_APART_FROM = 2;

/** A measured speed; `_u` marks the standard uncertainty of the value before it. Speeds in m/min. */
export interface Pace {
  distance_m: number;
  distance_u_m: number;
  elapsed_s: number;
  elapsed_u_s: number;
  speed_mpm: number;
  speed_u_mpm: number;
}

/** What was measured: a stretch in m and a time in ms, as a timed canter keeps them. */
export interface Timing {
  distance_m: number;
  elapsed_ms: number;
  distance_u_m?: number | null;
  measured_by: MeasuredBy;
  /** The step in which the time was written down: 1000 for whole seconds, 0 for this stopwatch. */
  resolution_ms?: number;
}

/** Standard uncertainty in m of a stretch of `distanceM` metres, by how it was measured. */
export function defaultDistanceU(distanceM: number, measuredBy: MeasuredBy): number {
  if (!Object.hasOwn(RELATIVE_U, measuredBy)) throw new BadInput("measured_by", "unknown_word");
  return aboveZero("distance_m", distanceM) * RELATIVE_U[measuredBy];
}

/** Standard uncertainty in s of a time started and stopped by hand; a display's step counts width / √12. */
function elapsedU(resolutionMs: number): number {
  return Math.hypot(HAND_TIMING_SD_S, notBelowZero("resolution_ms", resolutionMs) / 1000 / Math.sqrt(12));
}

function distanceU(timing: Timing): number {
  const stated = timing.distance_u_m;
  if (stated === null || stated === undefined) return defaultDistanceU(timing.distance_m, timing.measured_by);
  return notBelowZero("distance_u_m", stated);
}

/** v = 60 d / t in m/min with its standard uncertainty. Throws BadInput for a distance or time of zero or less. */
export function speed(timing: Timing): Pace {
  const distance = aboveZero("distance_m", timing.distance_m);
  const seconds = aboveZero("elapsed_ms", timing.elapsed_ms) / 1000;
  const distance_u_m = distanceU(timing);
  const elapsed_u_s = elapsedU(timing.resolution_ms ?? 0);
  const speed_mpm = (60 * distance) / seconds;
  const speed_u_mpm = speed_mpm * Math.hypot(distance_u_m / distance, elapsed_u_s / seconds);
  return { distance_m: distance, distance_u_m, elapsed_s: seconds, elapsed_u_s, speed_mpm, speed_u_mpm };
}

/** Standard uncertainty in m/min of the difference of two speeds; on one track the distance's error nearly cancels. */
export function differenceU(one: Pace, other: Pace, sameTrack: boolean): number {
  if (!sameTrack) return Math.hypot(one.speed_u_mpm, other.speed_u_mpm);
  const timing = [one, other].map((pace) => (pace.speed_mpm * pace.elapsed_u_s) / pace.elapsed_s);
  const shared = ((one.speed_mpm - other.speed_mpm) * one.distance_u_m) / one.distance_m;
  return Math.hypot(...timing, shared);
}

/** Whether watch and wheel can tell two canters apart. */
export function differ(one: Pace, other: Pace, sameTrack = false): boolean {
  return Math.abs(one.speed_mpm - other.speed_mpm) > TOLD_APART_FROM * differenceU(one, other, sameTrack);
}
