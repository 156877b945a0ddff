// Interval steps towards a level: canters with walks between, the canters growing, the walk not. The twin is
// server/fieldtally/trade/conditioning.py; both run fixtures/contract/conditioning.json. What is published is
// thin, so each part names its source, and a coach's plan goes before this one.

import { aboveZero } from "../pace/badInput.ts";
import { courseSpeeds, type Level, value } from "../pace/levels.ts";

/** `canters` canters of `work_min` minutes at `speed_mpm` (slowest, fastest), `walk_min` between. */
export interface IntervalStep {
  canters: number;
  work_min: number;
  walk_min: number;
  speed_mpm: [number, number];
}

/** Where each part is from and how sure it is; the words are `conditioning.source_…`. */
export const STEP_SOURCES = [
  { what: "structure", grade: "secondary" },
  { what: "warm_up", grade: "secondary" },
  { what: "minutes", grade: "from_memory" },
  { what: "speeds", grade: "from_memory" },
  { what: "lead_up", grade: "secondary" },
] as const;

export const CANTERS = 3;
export const WARM_UP_WALK_MIN = 15;
/** Every third or fourth day (from memory). */
export const DAYS_BETWEEN = [3, 4] as const;
const FIRST_CANTER_MIN = 3;
const LONGEST_CANTER_MIN = 6;
const FIRST_WALK_MIN = 3;
const LATER_WALK_MIN = 2;
const LATER_FROM_MIN = 5;
const SLOWEST_MPM = 350;
const FASTEST_MPM = 400;

/** Minutes the level's longest course takes at its fastest speed; null where either is not stated. */
export function courseMinutes(level: Level): number | null {
  const length_m = value(level, "cross_country", "length_max_m");
  const speeds = courseSpeeds(level);
  return length_m === null || speeds === null ? null : length_m / speeds[1];
}

/** Interval speed in m/min, slowest and fastest; never above the speed of the course prepared for. */
export function workSpeed(course_speed_mpm: number): [number, number] {
  aboveZero("course_speed_mpm", course_speed_mpm);
  return [Math.min(SLOWEST_MPM, course_speed_mpm), Math.min(FASTEST_MPM, course_speed_mpm)];
}

/** The steps towards a course of `course_min` minutes, shortest first; the last one's canters are as long as
 * the course, at least 3 and at most 6 minutes. */
export function intervalSteps(course_min: number, course_speed_mpm: number): IntervalStep[] {
  const asked = Math.ceil(aboveZero("course_min", course_min));
  const longest = Math.min(LONGEST_CANTER_MIN, Math.max(FIRST_CANTER_MIN, asked));
  const speed_mpm = workSpeed(course_speed_mpm);
  return Array.from({ length: longest - FIRST_CANTER_MIN + 1 }, (_, n) => stepOf(FIRST_CANTER_MIN + n, speed_mpm));
}

function stepOf(work_min: number, speed_mpm: [number, number]): IntervalStep {
  return { canters: CANTERS, work_min, walk_min: work_min >= LATER_FROM_MIN ? LATER_WALK_MIN : FIRST_WALK_MIN, speed_mpm };
}

/** The steps towards a level; none where the rulebook does not state its course's length and speed. */
export function stepsFor(level: Level): IntervalStep[] {
  const [minutes, speeds] = [courseMinutes(level), courseSpeeds(level)];
  return minutes === null || speeds === null ? [] : intervalSteps(minutes, speeds[1]);
}
