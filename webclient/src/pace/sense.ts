// Several canters against one target: how far they lie beside it and apart. The twin of
// server/fieldtally/trade/pace_sense.py; both run fixtures/contract/pace_sense.json.

import { meanAndScatter } from "./calibration.ts";
import type { Pace } from "./speed.ts";

/** All in m/min. `spread_mpm` (standard deviation) and `mean_u_mpm` are null for a single canter. */
export interface Sense {
  mean_mpm: number;
  spread_mpm: number | null;
  mean_u_mpm: number | null;
}

/** Mean and spread of at least one canter. The distance's error does not average out on one track, so it counts in full. */
export function sense(paces: readonly Pace[]): Sense {
  const { mean, scatter } = meanAndScatter(paces.map(({ speed_mpm }) => speed_mpm));
  if (paces.length < 2) return { mean_mpm: mean, spread_mpm: null, mean_u_mpm: null };
  const shared = paces.map((pace) => (pace.speed_mpm * pace.distance_u_m) / pace.distance_m);
  const root_mean_square = Math.hypot(...shared) / Math.sqrt(paces.length);
  return { mean_mpm: mean, spread_mpm: scatter, mean_u_mpm: Math.hypot(scatter / Math.sqrt(paces.length), root_mean_square) };
}
