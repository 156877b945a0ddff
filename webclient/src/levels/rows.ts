// A level's values as rows to read and search: by phase, in the rulebook's own order of quantities.

import { PHASES, type Phase } from "../entries/bodies.ts";
import type { Level, StatedValue } from "../pace/levels.ts";

export interface LevelRow {
  phase: Phase;
  quantity: string;
  name: string;
  stated: StatedValue & { note?: string };
}

/** What a course is made of comes before how it is scored. */
const ORDER: readonly Phase[] = ["cross_country", "show_jumping", "dressage"];
const SCORING = /penalt|eliminate|retire|time_limit|recorded|window|error|decimals|coefficient/;

/** Every stated value of a level whose name holds `wanted`; `nameOf` puts a quantity into words. */
export function levelRows(level: Level, wanted: string, nameOf: (quantity: string) => string): LevelRow[] {
  const needle = wanted.trim().toLowerCase();
  return ORDER.filter((phase) => PHASES.includes(phase)).flatMap((phase) =>
    Object.entries(level.phases[phase] ?? {})
      .map(([quantity, stated]) => ({ phase, quantity, name: nameOf(quantity), stated }))
      .filter((row) => row.name.toLowerCase().includes(needle))
      .sort((a, b) => Number(SCORING.test(a.quantity)) - Number(SCORING.test(b.quantity))),
  );
}

/** The value with its unit, lengths in the person's units. */
export function valueWords({ value, unit }: StatedValue, showHeight: (cm: number) => string, showDistance: (m: number) => string): string {
  if (unit === "cm") return showHeight(value);
  if (unit === "m") return showDistance(value);
  return unit === "count" ? String(value) : `${value} ${unit}`;
}
