// What a coach asks for in the form: the value to keep, or what is wrong with what she typed.

import type { BarChanged } from "../../board/standing.ts";
import { readNumber } from "./numbers.ts";
import { RANGES, REQUIREMENTS, SOURCES } from "./shipped.ts";

export type Trouble = "missing" | "range" | "whole" | "same";

/** Null as a value puts the default back. */
export type Asked = { value: number | null } | { trouble: Trouble };

export interface Now {
  numbers: Record<string, number>;
  changes: readonly BarChanged[];
}

export function readAsked(quantity: string, text: string, now: Now): Asked {
  if (quantity === "dropped") return { value: 1 };
  const value = readNumber(quantity, text);
  if (value === null) return { trouble: "missing" };
  const [least, most, whole] = rangeOf(quantity);
  if (value < least || value > most) return { trouble: "range" };
  if (whole && !Number.isInteger(value)) return { trouble: "whole" };
  if (value === now.numbers[quantity]) return { trouble: "same" };
  return { value: value === defaultOf(quantity, now) ? null : value };
}

export const rangeOf = (quantity: string) => RANGES[quantity] ?? [0, 1000, true];

/** What the number was before anybody changed it. */
export function defaultOf(quantity: string, { numbers, changes }: Now): number | undefined {
  return changes.find((each) => each.quantity === quantity)?.default ?? numbers[quantity];
}

/** What counts of a value, however far it was turned. */
export function counts(quantity: string, value: number): number {
  const [least, most] = rangeOf(quantity);
  return Math.min(Math.max(value, least), most);
}

/** The numbers that can be changed, in the order in which the bar states them. */
export function quantitiesOf(numbers: Record<string, number>): string[] {
  return Object.keys(RANGES).filter((quantity) => quantity in numbers && quantity !== "dropped");
}

/** Where one number of a requirement comes from. */
export function sourceOf(requirement_id: string, quantity: string): string {
  const [, weigh = "", source = "", own = []] = REQUIREMENTS[requirement_id] ?? [];
  return own.includes(quantity) ? source : (SOURCES[weigh]?.[quantity] ?? "");
}

/** The title of a requirement that the level's standing may not have, because it is left out. */
export const titleOf = (requirement_id: string): string => REQUIREMENTS[requirement_id]?.[0] ?? requirement_id;
