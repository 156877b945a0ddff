// What one version of a record says in certain fields, in words.

import type { Change } from "../../recording/history.ts";
import { showDistance, showHeight } from "../../units/index.ts";
import { decimal } from "../../words/decimal.ts";
import { knows, say, t } from "../../words/index.ts";

/** "Outcome: Refusal, Rein: Left rein" for those fields of a body. */
export function changeWords(paths: readonly string[], body: object): string {
  return paths.map((path) => t("attempt.field_is", { field: fieldWord(path), value: valueWord(path, at(body, path)) })).join(", ");
}

/** "Outcome: Clear → Refusal". */
export function oneChange({ path, from, to }: Change): string {
  return t("attempt.field_from_to", { field: fieldWord(path), from: valueWord(path, from), to: valueWord(path, to) });
}

function at(body: object, path: string): unknown {
  return path.split(".").reduce<unknown>((part, key) => (part as Record<string, unknown> | null)?.[key], body);
}

const lastOf = (path: string): string => path.split(".").at(-1)!;

/** A field of a kind has its own word, or its kind's general one, or is shown by its name. */
export function fieldWord(path: string): string {
  const key = `attempt.path.${lastOf(path)}`;
  return knows(key) ? say({ key }) : lastOf(path).replaceAll("_", " ");
}

export function valueWord(path: string, value: unknown): string {
  if (value === null || value === undefined || value === "") return t("frame.not_said");
  if (typeof value === "boolean") return t(value ? "attempt.yes" : "attempt.no");
  if (typeof value === "number") return numberWord(path, value);
  if (typeof value !== "string") return t("attempt.several");
  const key = `${VOCABULARY[lastOf(path)] ?? lastOf(path)}.${value}`;
  return knows(key) ? say({ key }) : value;
}

/** Fields whose vocabulary has another name in the words. */
const VOCABULARY: Record<string, string> = { pace: "gait", phase: "phase" };

function numberWord(path: string, value: number): string {
  if (path.endsWith("_cm")) return showHeight(value);
  return path.endsWith("_m") ? showDistance(value) : decimal(value);
}

