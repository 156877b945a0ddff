// Strides between the elements of a combination, for planning. A horse's canter stride is taken as 3.6 m
// (12 ft), landing and take-off as half a stride each: common practice, no source. Every horse differs.

export const PLANNING_STRIDE_M = 3.6;

/** Non-jumping strides that fit `distance_m`, to one decimal; 0 is a bounce. Null where it is not a distance. */
export function planningStrides(distance_m: number | null): number | null {
  if (distance_m === null || !(distance_m > 0)) return null;
  return Math.max(0, Math.round((distance_m / PLANNING_STRIDE_M - 1) * 10) / 10);
}
