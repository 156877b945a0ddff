// What the screens of this phone need of a rulebook kept on it: values of a level by phase and quantity,
// under the rulebook's own names (server/fieldtally/trade/quantities.py). Null means not stated.

import type { Phase, RulebookValue } from "../entries/bodies.ts";
import type { TimeRules } from "./course.ts";
import type { DressageRules } from "./dressage.ts";

export interface StatedValue {
  value: number;
  unit: string;
  source: string;
  grade: string;
}

export interface Level {
  id: string;
  name: string;
  order: number;
  phases: Partial<Record<Phase, Record<string, StatedValue>>>;
}

export interface Rulebook {
  id: string;
  title: string;
  edition: string;
  levels: Level[];
}

/** The number alone, in the quantity's unit. */
export function value(level: Level | null, phase: Phase, quantity: string): number | null {
  return level?.phases[phase]?.[quantity]?.value ?? null;
}

/** A level's speed to practise: the greatest where a range is stated, as readiness weighs it. */
export function levelSpeed(level: Level): number | null {
  return courseSpeeds(level)?.[1] ?? null;
}

function corrected(level: Level, { phase, quantity, value: number, edition, article }: RulebookValue): Level {
  const { [quantity]: before, ...others } = level.phases[phase] ?? {};
  const source = `${edition}, ${article}`;
  const after = number === null ? {} : { [quantity]: { value: number, unit: before?.unit ?? "", source, grade: "corrected" } };
  return { ...level, phases: { ...level.phases, [phase]: { ...others, ...after } } };
}

/** The rulebook with the values that this logbook has put right; those of other rulebooks are passed over. */
export function withCorrections(rulebook: Rulebook, corrections: RulebookValue[]): Rulebook {
  const mine = corrections.filter((one) => one.rulebook_id === rulebook.id);
  const levels = rulebook.levels.map((level) => mine.filter((one) => one.level_id === level.id).reduce(corrected, level));
  return { ...rulebook, levels };
}

/** Slowest and fastest cross-country speed in m/min that a level states; null where it states none. */
export function courseSpeeds(level: Level): [number, number] | null {
  const stated = ["speed_min_mpm", "speed_mpm", "speed_max_mpm"].map((name) => value(level, "cross_country", name));
  const known = stated.filter((speed) => speed !== null);
  return known.length > 0 ? [Math.min(...known), Math.max(...known)] : null;
}

export function timeRules(level: Level | null): TimeRules {
  const stated = (name: string): number | null => value(level, "cross_country", name);
  return {
    time_penalties_per_second: stated("time_penalties_per_second"),
    time_limit_factor: stated("time_limit_factor"),
    too_fast_penalties_per_second: stated("too_fast_penalties_per_second"),
    too_fast_speed_mpm: stated("too_fast_speed_mpm"),
    too_fast_window_s: stated("too_fast_window_s"),
    rounding: "up",
  };
}

export function dressageRules(level: Level | null): DressageRules {
  const stated = (name: string): number | null => value(level, "dressage", name);
  return {
    error_first_marks: stated("error_first_marks"),
    error_second_marks: stated("error_second_marks"),
    errors_that_eliminate: stated("errors_that_eliminate"),
    percent_decimals: stated("percent_decimals"),
    penalties_decimals: stated("penalties_decimals"),
    penalty_coefficient: stated("penalty_coefficient"),
  };
}
