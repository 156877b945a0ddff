// The speed from flag to flag, where the track's flags were measured and each was tapped.

import type { TimedCanter } from "../entries/bodies.ts";
import { type Pace, speed } from "./speed.ts";

export interface Leg {
  from_ms: number;
  to_ms: number;
  pace: Pace;
}

type Timed = Pick<TimedCanter, "distance_m" | "distance_u_m" | "measured_by" | "elapsed_ms" | "splits_ms" | "flags_m">;

/** The legs between the flags, first to last; none where the taps and the flags do not go with each other. */
export function legs(canter: Timed): Leg[] {
  const { distance_m, distance_u_m, measured_by, elapsed_ms, splits_ms, flags_m } = canter;
  if (splits_ms.length === 0 || splits_ms.length !== flags_m.length) return [];
  const [times, places] = [[0, ...splits_ms, elapsed_ms], [0, ...flags_m, distance_m]];
  if (places.some((place, n) => n > 0 && place <= places[n - 1]!)) return [];
  return times.slice(1).map((to_ms, n) => {
    const [from_ms, length] = [times[n]!, places[n + 1]! - places[n]!];
    // an instrument errs in proportion, so a leg shares the track's relative uncertainty
    const leg_u = distance_u_m === null ? null : (distance_u_m * length) / distance_m;
    return { from_ms, to_ms, pace: speed({ distance_m: length, distance_u_m: leg_u, measured_by, elapsed_ms: to_ms - from_ms }) };
  });
}
