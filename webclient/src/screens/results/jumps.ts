// A round told fence by fence: what comes next, and what it adds up to. The book checks the same sums
// (book/bodies/results.py).

import type { Jump } from "../../entries/bodies.ts";

export const JUMP_OUTCOMES = ["clear", "knockdown", "refusal", "run_out", "rider_fall", "horse_fall"] as const satisfies readonly Jump["outcome"][];

const STOPS: Jump["outcome"][] = ["refusal", "run_out"];
const partsOf = (label: string) => /^(\d*)([A-F]?)$/.exec(label) ?? [label, "", ""];

/** The fence that comes next: the same one after a stop, the next part within a combination. */
export function nextLabel(jumps: readonly Jump[]): string {
  const last = jumps.at(-1);
  if (!last) return "1";
  if (STOPS.includes(last.outcome)) return last.label;
  const [, , letter] = partsOf(last.label);
  return letter ? nextPart(last.label) : nextFence(last.label);
}

export function nextFence(label: string): string {
  return String(Number(partsOf(label)[1]) + 1);
}

/** `4` becomes `4A`, `4A` becomes `4B`; after F there are no more. */
export function nextPart(label: string): string {
  const [, number, letter] = partsOf(label);
  return number + (letter ? String.fromCharCode(Math.min(letter.charCodeAt(0) + 1, 70)) : "A");
}

export interface Counts {
  efforts: number;
  knockdowns: number;
  refusals: number;
  combinations: number;
  rider_fall: boolean;
  horse_fall: boolean;
}

export function countsOf(jumps: readonly Jump[]): Counts {
  const often = (...outcomes: Jump["outcome"][]) => jumps.filter(({ outcome }) => outcomes.includes(outcome)).length;
  const labels = new Set(jumps.map(({ label }) => label));
  return {
    efforts: labels.size, knockdowns: often("knockdown"), refusals: often(...STOPS),
    combinations: new Set([...labels].filter((label) => /[A-F]$/.test(label)).map((label) => partsOf(label)[1])).size,
    rider_fall: often("rider_fall") > 0, horse_fall: often("horse_fall") > 0,
  };
}
