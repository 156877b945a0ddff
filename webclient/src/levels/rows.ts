// A level's values as rows to read and search: by part, in the rulebook's own order of quantities.

import type { RulebookPart } from "../entries/bodies.ts";
import { type Level, type Rulebook, type StatedValue, valuesOf } from "../pace/levels.ts";
import { decimal } from "../words/decimal.ts";

/** `stated` null: this edition does not state it. */
export interface LevelRow {
  phase: RulebookPart;
  quantity: string;
  name: string;
  unit: string;
  stated: (StatedValue & { note?: string }) | null;
}

/** What a course is made of comes before how it is scored. */
const ORDER: readonly RulebookPart[] = ["cross_country", "show_jumping", "dressage", "entry", "qualifying_result"];
const SCORING = /penalt|eliminate|retire|time_limit|recorded|window|error|decimals|coefficient/;

/** Every quantity of a level whose name holds `wanted`, stated or not; `nameOf` puts it into words. */
export function levelRows(book: Rulebook, level: Level, wanted: string, nameOf: (quantity: string) => string): LevelRow[] {
  const needle = wanted.trim().toLowerCase();
  return ORDER.flatMap((phase) => {
    const values = valuesOf(level, phase);
    const known = book.quantities?.[phase] ?? {};
    return [...new Set([...Object.keys(values), ...Object.keys(known)])]
      .map((quantity) => ({ phase, quantity, name: nameOf(quantity), unit: (known[quantity] ?? values[quantity]!).unit, stated: values[quantity] ?? null }))
      .filter((row) => row.name.toLowerCase().includes(needle))
      .sort((a, b) => Number(SCORING.test(a.quantity)) - Number(SCORING.test(b.quantity)));
  });
}

/** A number with its unit, lengths in the person's units. */
export function valueWords(value: number, unit: string, showHeight: (cm: number) => string, showDistance: (m: number) => string): string {
  if (unit === "cm") return showHeight(value);
  if (unit === "m") return showDistance(value);
  return unit === "count" ? decimal(value) : `${decimal(value)} ${unit}`;
}

/** Rulebooks by title, those in force apart from the older editions. */
export function inOrder(books: readonly Rulebook[]): { current: Rulebook[]; older: Rulebook[] } {
  const sorted = [...books].sort((one, other) => one.title.localeCompare(other.title));
  return { current: sorted.filter(({ status }) => status !== "older"), older: sorted.filter(({ status }) => status === "older") };
}
