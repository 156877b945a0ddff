// Which points of a trace can be believed, and where it has gaps. Limits here are judgement, no published source.

import { metresBetween } from "./earth.ts";
import type { Point } from "./points.ts";

/** A radius beyond this in m comes from masts, not from satellites. */
export const COARSE_M = 50;
/** No horse is as fast; the fastest measured gallop is below 20 m/s (Guinness World Records, from memory). */
export const FASTEST_MPS = 25;
/** Radius in m where nobody gave one. */
export const ASSUMED_ACCURACY_M = 10;
/** So many points that agree with each other but not with the last one are where the phone really is. */
const AGREEING = 3;
/** At one fix a second; slower recorders get three of their usual intervals. */
const SHORTEST_GAP_MS = 5000;

export interface Believed {
  /** Stretches without a gap inside them, in order. */
  stretches: Point[][];
  /** Points left out: too coarse, or too far from their neighbours to be ridden. */
  coarse: number;
  jumps: number;
}

export function accuracyOf(point: Point): number {
  return point.accuracy_m ?? ASSUMED_ACCURACY_M;
}

function reachable(from: Point, to: Point): boolean {
  const seconds = (to.at_ms! - from.at_ms!) / 1000;
  return metresBetween(from, to) <= FASTEST_MPS * seconds + accuracyOf(from) + accuracyOf(to);
}

/** Leaves out single leaps there and back; goes on where the phone really was somewhere else. */
function withoutJumps(points: Point[]): Point[] {
  const kept: Point[] = [];
  let away: Point[] = [];
  for (const point of points) {
    const last = kept.at(-1);
    if (last === undefined || reachable(last, point)) {
      kept.push(point);
      away = [];
      continue;
    }
    if (away.length > 0 && !reachable(away.at(-1)!, point)) away = [];
    away.push(point);
    if (away.length < AGREEING) continue;
    kept.push({ ...away[0]!, breaks: true }, ...away.slice(1));
    away = [];
  }
  return kept;
}

export function median(values: number[]): number {
  return values.length === 0 ? 0 : [...values].sort((one, other) => one - other)[values.length >> 1]!;
}

/** Milliseconds between points of this trace as a rule. */
export function usualStepMs(points: Point[]): number {
  return median(points.slice(1).map((point, n) => point.at_ms! - points[n]!.at_ms!));
}

/** A trace with times throughout, in the order of time. */
export function believe(points: Point[]): Believed {
  const fine = points.filter((point) => accuracyOf(point) <= COARSE_M);
  const kept = withoutJumps(fine);
  const gap_ms = Math.max(SHORTEST_GAP_MS, 3 * usualStepMs(kept));
  const stretches: Point[][] = [];
  for (const [n, point] of kept.entries()) {
    if (n === 0 || point.breaks || point.at_ms! - kept[n - 1]!.at_ms! > gap_ms) stretches.push([]);
    stretches.at(-1)!.push(point);
  }
  return { stretches, coarse: points.length - fine.length, jumps: fine.length - kept.length };
}
