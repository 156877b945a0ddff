// Strides between the elements of a combination, for planning: twin of server/fieldtally/trade/strides.py,
// which names the sources. A planning stride is 12 ft, landing and take-off together another 12 ft. Every
// horse differs, and strides across country are longer.

const FOOT_M = 0.3048;

export const PLANNING_STRIDE_M = 12 * FOOT_M;

export interface PlannedStrides {
  /** Whole strides, the nearest number; 0 is a bounce. */
  strides: number;
  /** How much longer than that number rides the distance is, in m; below zero where it is shorter. */
  over_m: number;
}

/** The strides that ride `distance_m` best; null where it is not a distance. */
export function planningStrides(distance_m: number | null): PlannedStrides | null {
  if (distance_m === null || !(distance_m > 0)) return null;
  const strides = Math.max(0, Math.floor(distance_m / PLANNING_STRIDE_M - 1 + 0.5));
  const over_m = distance_m - (strides + 1) * PLANNING_STRIDE_M;
  return { strides, over_m: Math.round(over_m * 10) / 10 };
}
