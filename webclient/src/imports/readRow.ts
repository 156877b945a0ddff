// One row of a table as the body it would make, or what stands against it: which column, why, and what would do.

import { ACTIVITIES, ATTITUDES, COMPANIES, EVENT_STATUSES, GROUNDS, LANDINGS, LIMITS, OUTCOMES, PACES, PROFILES, REINS, WAYS } from "../entries/bodies.ts";
import type { Plain } from "../entries/merge.ts";
import { typedNumber } from "../screens/results/numbers.ts";
import { readMarks } from "../screens/results/markSheet.ts";
import type { TableKind } from "../copies/columns.ts";
import { neededFor, plainName, wordMeant } from "./columnNames.ts";
import { readDay } from "./readDay.ts";

/** The names that must be found or made: by the person's leave only. */
export interface Row {
  at: number;
  cells: Record<string, string>;
  values: Plain;
  troubles: Trouble[];
}

/** `key` under `import.bad_…`; `values` fill its gaps. */
export interface Trouble {
  column: string;
  key: "missing" | "date" | "date_order" | "future" | "word" | "number" | "marks" | "long" | "percent" | "level";
  values: Record<string, string | number>;
}

export interface Reading {
  kind: TableKind;
  today: string;
  /** For 3/4/2025; null while nobody said. */
  dayFirst: boolean | null;
  /** Plain name or id of a level -> its id, from the rulebooks on this phone. */
  levels: Map<string, string>;
  shown: (column: string, word: string) => string;
}

const YES_NO = ["true", "false"];
const WORDS: Record<string, readonly string[]> = {
  activity: ACTIVITIES, profile: PROFILES, element: [..."ABCDEF"], outcome: OUTCOMES, rein: REINS, ground: GROUNDS, way: WAYS, landing: LANDINGS,
  company: COMPANIES, pace: PACES, attitude: ATTITUDES, status: EVENT_STATUSES, rider_fall: YES_NO, horse_fall: YES_NO, completed: YES_NO, judged: YES_NO,
};

export function readRow(at: number, cells: Record<string, string>, reading: Reading): Row {
  const row: Row = { at, cells, values: {}, troubles: [] };
  const needed = neededFor(reading.kind);
  for (const [column, cell] of Object.entries(cells)) readCell(row, column, cell, reading);
  for (const column of needed) if (!cells[column]?.trim()) row.troubles.push({ column, key: "missing", values: {} });
  const scoreless = reading.kind === "flatwork_test" && !row.values.percent && !(row.values.marks as unknown[] | undefined)?.length;
  if (scoreless && !row.troubles.length) row.troubles.push({ column: "percent", key: "percent", values: {} });
  return row;
}

function readCell(row: Row, column: string, cell: string, reading: Reading): void {
  const text = column === "note" ? cell : cell.trim();
  if (text === "") return;
  const value = valueOf(column, text, reading);
  if (value !== null && typeof value === "object" && "key" in value) row.troubles.push({ ...(value as Trouble), column });
  else row.values[column] = value;
}

function valueOf(column: string, text: string, reading: Reading): unknown {
  const limit = LIMITS[reading.kind][column];
  if (column === "date") return readDay(text, reading.dayFirst, reading.today);
  if (column === "marks") return marksOf(text);
  if (column === "level_id" && reading.levels.size) return reading.levels.get(plainName(text)) ?? { key: "level", values: { text: text.slice(0, 40) } };
  if (WORDS[column]) return wordOf(column, text, WORDS[column], reading);
  if (limit?.most !== undefined) return numberOf(text, limit.least!, limit.most, limit.whole ?? false);
  const most = limit?.characters ?? 60;
  return text.length > most ? { key: "long", values: { most } } : text;
}

function wordOf(column: string, text: string, words: readonly string[], { shown }: Reading): unknown {
  const word = wordMeant(text, words, (each) => shown(column, each));
  if (word === undefined) return { key: "word", values: { text: text.slice(0, 40), words: words.map((each) => shown(column, each)).join(", ") } };
  return words === YES_NO ? word === "true" : word;
}

function numberOf(text: string, least: number, most: number, whole: boolean): unknown {
  return typedNumber(text.replace(/\s*(%|cm)$/, ""), least, most, whole) ?? { key: "number", values: { text: text.slice(0, 40), least, most } };
}

function marksOf(text: string): unknown {
  const { marks, unread } = readMarks(text);
  return unread.length ? { key: "marks", values: { text: unread.join(" ").slice(0, 40) } } : marks;
}
