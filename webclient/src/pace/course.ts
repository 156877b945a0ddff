// The course card: optimum time, limit and minute markers from a length and a speed. The twin of
// server/fieldtally/trade/course.py, optimum.py and time_penalties.py. Seconds throughout; minutes are for
// people and come last (2300 m at 600 m/min is 230 s, 3:50, not the 3:49 of rounding minutes first).

import { aboveZero, BadInput, notBelowZero } from "./badInput.ts";

/** How an optimum time that is no whole second is brought to one; "up" is the default, from memory. */
export type Rounding = "up" | "nearest" | "none";

/** What one rulebook says of time at one level, under its own names; null where it does not. */
export interface TimeRules {
  time_penalties_per_second: number | null;
  time_limit_factor: number | null;
  too_fast_penalties_per_second: number | null;
  too_fast_speed_mpm: number | null;
  too_fast_window_s: number | null;
  rounding: Rounding;
}

export interface CourseTimes {
  length_m: number;
  speed_mpm: number;
  optimum_s: number;
  limit_s: number | null;
  /** Quicker than this is too fast; null where nothing is. */
  fastest_s: number | null;
}

/** A place on the course in m from the start, and the clock there in s at an even speed. */
export interface Marker {
  minute: number;
  distance_m: number;
  clock_s: number;
}

export interface CourseCard {
  times: CourseTimes;
  minute_markers: Marker[];
  fences: (FencePlace & { clock_s: number })[];
}

export const NO_RULES: TimeRules = {
  time_penalties_per_second: null,
  time_limit_factor: null,
  too_fast_penalties_per_second: null,
  too_fast_speed_mpm: null,
  too_fast_window_s: null,
  rounding: "up",
};

const MOST_MINUTES = 60;
const ROUND: Record<Rounding, (seconds: number) => number> = {
  up: Math.ceil,
  nearest: (seconds) => Math.floor(seconds + 0.5),
  none: (seconds) => seconds,
};

// Whole thousandths on both sides of the division, so that a quotient that is a whole number comes out as one.
const thousandths = (value: number): number => Math.round(value * 1000);

function exactSeconds(lengthM: number, speedMpm: number): number {
  return (60 * thousandths(aboveZero("length_m", lengthM))) / thousandths(aboveZero("speed_mpm", speedMpm));
}

/** Seconds for a course of `lengthM` metres at `speedMpm` m/min, rounded as the rulebook rounds. */
export function timeAtSpeed(lengthM: number, speedMpm: number, rounding: Rounding = "up"): number {
  if (!Object.hasOwn(ROUND, rounding)) throw new BadInput("rounding", "unknown_word");
  return ROUND[rounding](exactSeconds(lengthM, speedMpm));
}

function fastest(lengthM: number, optimumS: number, rules: TimeRules): number | null {
  if (rules.too_fast_speed_mpm !== null) return timeAtSpeed(lengthM, rules.too_fast_speed_mpm, rules.rounding);
  if (rules.too_fast_window_s === null) return null;
  return optimumS - notBelowZero("too_fast_window_s", rules.too_fast_window_s);
}

export function courseTimes(lengthM: number, speedMpm: number, rules: TimeRules): CourseTimes {
  const optimum_s = timeAtSpeed(lengthM, speedMpm, rules.rounding);
  const limit_s = rules.time_limit_factor === null ? null : rules.time_limit_factor * optimum_s;
  return { length_m: lengthM, speed_mpm: speedMpm, optimum_s, limit_s, fastest_s: fastest(lengthM, optimum_s, rules) };
}

/** Where each full minute ends at an even speed; the finish itself is no marker. */
export function markersOf(lengthM: number, speedMpm: number): Marker[] {
  const minutes = exactSeconds(lengthM, speedMpm) / 60;
  if (minutes > MOST_MINUTES) throw new BadInput("length_m", "over_an_hour");
  return Array.from({ length: Math.max(0, Math.ceil(minutes) - 1) }, (_, n) => ({
    minute: n + 1,
    distance_m: (n + 1) * speedMpm,
    clock_s: 60 * (n + 1),
  }));
}

/** A fence of the course: its label and its distance from the start in m. */
export interface FencePlace {
  label: string;
  distance_m: number;
}

/** The clock in s at each fence at an even speed; fences come in the order they are jumped. */
export function fenceClocks(fences: FencePlace[], lengthM: number, speedMpm: number): (FencePlace & { clock_s: number })[] {
  return fences.map((fence, index) => {
    const field = `fences[${index}].distance_m`;
    if (notBelowZero(field, fence.distance_m) > lengthM) throw new BadInput(field, "beyond_finish");
    if (fence.distance_m < (fences[index - 1]?.distance_m ?? 0)) throw new BadInput(field, "out_of_order");
    return { ...fence, clock_s: fence.distance_m === 0 ? 0 : exactSeconds(fence.distance_m, speedMpm) };
  });
}

export function courseCard(lengthM: number, speedMpm: number, rules: TimeRules, fences: FencePlace[] = []): CourseCard {
  return {
    times: courseTimes(lengthM, speedMpm, rules),
    minute_markers: markersOf(lengthM, speedMpm),
    fences: fenceClocks(fences, lengthM, speedMpm),
  };
}

/** “3:50”: minutes and seconds to the nearest whole one, halves up. */
export function clockWords(seconds: number): string {
  const whole = Math.floor(seconds + 0.5);
  return `${Math.floor(whole / 60)}:${String(whole % 60).padStart(2, "0")}`;
}
