// How early or late a canter was against a target speed: the twin of server/fieldtally/trade/lateness.py.
// One convention everywhere: late is positive, early negative.

import { aboveZero } from "./badInput.ts";
import { type Pace, TOLD_APART_FROM } from "./speed.ts";

export type Verdict = "slow" | "fast" | "on_target";

export interface Lateness {
  target_speed_mpm: number;
  target_s: number;
  /** Target less speed in m/min: positive is too slow. */
  slow_mpm: number;
  seconds_late: number;
  seconds_late_u: number;
  /** How far ahead a horse exactly on the target would be when this one passes the second flag. */
  metres_late: number;
  metres_late_u: number;
  told_apart: boolean;
  verdict: Verdict;
}

/** Seconds t − 60 d / v₀ and metres v₀ t / 60 − d against `targetSpeedMpm` in m/min, a rule without uncertainty. */
export function lateness(pace: Pace, targetSpeedMpm: number): Lateness {
  const perSecond = aboveZero("target_speed_mpm", targetSpeedMpm) / 60;
  const target_s = pace.distance_m / perSecond;
  const slow_mpm = targetSpeedMpm - pace.speed_mpm;
  const told_apart = Math.abs(slow_mpm) > TOLD_APART_FROM * pace.speed_u_mpm;
  return {
    target_speed_mpm: targetSpeedMpm,
    target_s,
    slow_mpm,
    seconds_late: pace.elapsed_s - target_s,
    seconds_late_u: Math.hypot(pace.elapsed_u_s, pace.distance_u_m / perSecond),
    metres_late: perSecond * pace.elapsed_s - pace.distance_m,
    metres_late_u: Math.hypot(pace.distance_u_m, perSecond * pace.elapsed_u_s),
    told_apart,
    verdict: told_apart ? (slow_mpm > 0 ? "slow" : "fast") : "on_target",
  };
}
