import { valueWords } from "../../levels/rows.ts";
import { showDistance, showHeight } from "../../units/index.ts";
import { knows, say } from "../../words/index.ts";

const keyOf = (unit: string): string => `level.in.${unit.replaceAll(" ", "_")}`;

/** A value with its unit, in the person's units and language. */
export function valueShown(value: number, unit: string): string {
  const key = keyOf(unit);
  return knows(key) ? say({ key, values: { n: value } }) : valueWords(value, unit, showHeight, showDistance);
}

/** The unit alone. */
export function unitShown(unit: string): string {
  return knows(keyOf(unit)) ? say({ key: keyOf(unit), values: { n: "" } }).trim() : unit;
}
