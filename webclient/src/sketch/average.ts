// One position out of the fixes of somebody who stands still.

import { metresPerDegree, offsetOf } from "../location/earth.ts";
import type { Fix } from "../location/fixes.ts";

/** Fixes so much coarser than the finest tell nothing more. Judgement, no published source. */
const TIMES_COARSER = 3;
/** 95 % of a round scatter lie within so many of its standard deviations along one axis (Rayleigh: √(−2 ln 0.05)). */
const ROUND_95 = Math.sqrt(-2 * Math.log(0.05));

export interface Averaged {
  latitude: number;
  longitude: number;
  position_accuracy_m: number;
  /** How many fixes went into it. */
  fixes: number;
}

/** The mean of the fixes, each weighted by 1/accuracy². The errors of fixes seconds apart are nearly the same error,
 * so its radius is never called smaller than that of the finest fix, and larger where they scatter more. */
export function average(fixes: readonly Fix[]): Averaged | null {
  const finest = Math.min(...fixes.map(({ accuracy_m }) => accuracy_m));
  const used = fixes.filter(({ accuracy_m }) => accuracy_m <= TIMES_COARSER * finest);
  const first = used[0];
  if (!first) return null;
  const weights = used.map(({ accuracy_m }) => 1 / Math.max(accuracy_m, 0.1) ** 2);
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const away = used.map((fix) => offsetOf(first, fix));
  const weighted = (value: (at: { x: number; y: number }) => number): number => away.reduce((sum, at, n) => sum + weights[n]! * value(at), 0) / total;
  const [x, y] = [weighted((at) => at.x), weighted((at) => at.y)];
  const scatter_m = ROUND_95 * Math.sqrt(weighted((at) => ((at.x - x) ** 2 + (at.y - y) ** 2) / 2));
  const { north, east } = metresPerDegree(first.latitude);
  return {
    latitude: Math.round((first.latitude + y / north) * 1e7) / 1e7, longitude: Math.round((first.longitude + x / east) * 1e7) / 1e7,
    position_accuracy_m: Math.round(Math.max(finest, scatter_m) * 10) / 10, fixes: used.length,
  };
}
