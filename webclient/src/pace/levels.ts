// What the screens of this phone need of a rulebook kept on it: values of a level by phase and quantity,
// under the rulebook's own names (server/fieldtally/trade/quantities.py). Null means not stated.

import type { Ask, Phase, RulebookPart, RulebookValue } from "../entries/bodies.ts";
import { troubleWith } from "../levels/correction.ts";
import type { TimeRules } from "./course.ts";
import type { DressageRules } from "./dressage.ts";

export interface StatedValue {
  value: number;
  unit: string;
  source: string;
  grade: string;
}

type Values = Record<string, StatedValue>;

export interface Level {
  id: string;
  name: string;
  order: number;
  phases: Partial<Record<Phase, Values>>;
  /** Who may enter. */
  entry?: Values;
  /** What makes a result at this level a qualifying one. */
  qualifying_result?: Values;
  /** What it introduces. */
  asks?: { word: Ask }[];
}

/** What a value may be: its unit, and the range in which it can be meant. */
export interface Quantity {
  unit: string;
  least: number;
  most: number;
  whole: boolean;
}

export interface Rulebook {
  id: string;
  title: string;
  edition: string;
  status?: string;
  levels: Level[];
  /** Absent from a rulebook that an older server sent. */
  quantities?: Partial<Record<RulebookPart, Record<string, Quantity>>>;
}

/** The number alone, in the quantity's unit. */
export function value(level: Level | null, phase: Phase, quantity: string): number | null {
  return level?.phases[phase]?.[quantity]?.value ?? null;
}

/** A level's speed to practise: the greatest where a range is stated, as readiness weighs it. */
export function levelSpeed(level: Level): number | null {
  return courseSpeeds(level)?.[1] ?? null;
}

/** What a level states of one part, by quantity. */
export function valuesOf(level: Level, part: RulebookPart): Values {
  return (part === "entry" || part === "qualifying_result" ? level[part] : level.phases[part]) ?? {};
}

function corrected(level: Level, { phase, quantity, value: number, edition, article }: RulebookValue, unit: string): Level {
  const { [quantity]: _, ...others } = valuesOf(level, phase);
  const stated = { value: number!, unit, source: `${edition}, ${article}`, grade: "corrected" };
  const values = number === null ? others : { ...others, [quantity]: stated };
  return phase === "entry" || phase === "qualifying_result" ? { ...level, [phase]: values } : { ...level, phases: { ...level.phases, [phase]: values } };
}

/** The rulebook with the values that this logbook has put right, the newest last; those that cannot apply are
 * passed over. */
export function withCorrections(rulebook: Rulebook, corrections: readonly RulebookValue[]): Rulebook {
  return corrections.filter((each) => troubleWith(rulebook, each) === null).reduce((book, each) => {
    const unit = rulebook.quantities?.[each.phase]?.[each.quantity]?.unit;
    const change = (level: Level) => corrected(level, each, unit ?? valuesOf(level, each.phase)[each.quantity]?.unit ?? "");
    return { ...book, levels: book.levels.map((level) => (level.id === each.level_id ? change(level) : level)) };
  }, rulebook);
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
