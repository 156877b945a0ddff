// Every tap can be undone, and undone again and again back to the first. A step says what was done; its
// reverse is one more entry in the book, so nothing is ever lost by undoing.

import type { Bodies, KindName } from "../entries/bodies.ts";

export type Step =
  | { did: "added"; record_id: string; kind: KindName; label: string }
  | { did: "taken_back"; record_id: string; kind: KindName; label: string }
  | { [K in KindName]: { did: "changed"; record_id: string; kind: K; label: string; before: Bodies[K] } }[KindName];

export type Reverse =
  | { do: "take_back"; record_id: string }
  | { do: "put_back"; record_id: string }
  | { [K in KindName]: { do: "save"; record_id: string; kind: K; body: Bodies[K] } }[KindName];

/** More steps than anybody undoes one by one; the bin and the history reach further. */
export const STEPS_KEPT = 50;

export function pushStep(steps: readonly Step[], step: Step): Step[] {
  return [...steps, step].slice(-STEPS_KEPT);
}

export function dropStep(steps: readonly Step[], step: Step): Step[] {
  return steps.filter((each) => each !== step);
}

export function reverseOf(step: Step): Reverse {
  if (step.did === "added") return { do: "take_back", record_id: step.record_id };
  if (step.did === "taken_back") return { do: "put_back", record_id: step.record_id };
  return { do: "save", record_id: step.record_id, kind: step.kind, body: step.before } as Reverse;
}
