// Times that are asked about, never thrown away and never silently believed. The limits only decide when to
// ask: a walk is about 100 m/min, and no ridden horse gallops at 1,100 (common practice, no source).

import type { Judged } from "./judge.ts";

export const SHORTEST_KEPT_MS = 500;
export const LONGEST_KEPT_MS = 7_200_000;
const SLOWEST_MPM = 90;
const FASTEST_MPM = 1100;

export type Question = "too_short" | "too_fast" | "too_slow" | "too_long";

/** What is odd about a time over a distance; null when nothing is. */
export function question(elapsedMs: number, distanceM: number): Question | null {
  if (!(elapsedMs >= SHORTEST_KEPT_MS)) return "too_short";
  if (elapsedMs > LONGEST_KEPT_MS) return "too_long";
  const mpm = (distanceM * 60_000) / elapsedMs;
  if (mpm > FASTEST_MPM) return "too_fast";
  return mpm < SLOWEST_MPM ? "too_slow" : null;
}

/** Whether a timed canter's body may hold this time at all. */
export function keepable(elapsedMs: number): boolean {
  return elapsedMs >= SHORTEST_KEPT_MS && elapsedMs <= LONGEST_KEPT_MS;
}

const APART_MS = 250;

// The run by one raw clock alone: "wall_changed" is what using the monotonic clock is called, "slept" the wall's.
function byOneClock(judged: Judged): Judged[] {
  const wall: Judged = { ...judged, elapsed_ms: judged.wall_ms, clock: "slept", sure: true };
  if (judged.monotonic_ms === null) return [wall];
  return [{ ...judged, elapsed_ms: judged.monotonic_ms, clock: "wall_changed", sure: true }, wall];
}

/** The other times this run may have taken: none where the clocks agree. */
export function otherReadings(judged: Judged): Judged[] {
  if (judged.clock === "agree") return [];
  const apart = (one: Judged): boolean => Math.abs(one.elapsed_ms - judged.elapsed_ms) > APART_MS;
  return byOneClock(judged).filter((one) => apart(one) && keepable(one.elapsed_ms));
}

export interface Settled {
  chosen: Judged;
  others: Judged[];
}

// A slow time may be a sleeping phone and a walk; only where the clocks part by this much is it likelier that
// somebody set the wall clock, or its zone, while the page was hidden.
const CLOCK_SET_MS = 900_000;

function likelier(judged: Judged, other: Judged, distanceM: number): boolean {
  const odd = question(judged.elapsed_ms, distanceM);
  if (odd === null || question(other.elapsed_ms, distanceM) !== null) return false;
  return odd === "too_fast" || odd === "too_short" || judged.elapsed_ms - other.elapsed_ms >= CLOCK_SET_MS;
}

/**
 * The reading to go with, and the ones on offer beside it. Where the first one gives an impossible speed and
 * another a believable one, that is taken, and the person is asked.
 */
export function settleReading(judged: Judged, distanceM: number): Settled {
  const others = otherReadings(judged);
  const better = others.find((other) => likelier(judged, other, distanceM));
  if (better === undefined) return { chosen: judged, others };
  return { chosen: { ...better, sure: false }, others: [judged, ...others.filter((one) => one !== better)] };
}
