import { decimal } from "../../words/decimal.ts";

const STEPS = ["B", "kB", "MB", "GB"];

/** `640 kB`, `2.1 MB`: two figures that matter. */
export function showBytes(bytes: number): string {
  let rest = bytes;
  let step = 0;
  for (; rest >= 1000 && step < STEPS.length - 1; step++) rest /= 1000;
  return `${rest < 10 && step > 0 ? decimal(rest.toFixed(1)) : Math.round(rest)} ${STEPS[step]}`;
}
