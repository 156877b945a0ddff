// Where the next tap at a combination belongs: at which element, and in which sequence. All of it follows
// from the attempts already kept, so it survives a killed page.

import type { Attempt, Fence } from "../entries/bodies.ts";
import { madeAt } from "./made.ts";
import type { Made } from "./made.ts";
import { isStop, wentOver } from "./outcomes.ts";

export type Letter = NonNullable<Attempt["element"]>;

/** `sequence_id` null at a combination: the next attempt begins a new sequence. */
export interface Place {
  element: Letter | null;
  sequence_id: string | null;
}

/** A sequence nobody went on with for so long is over: elements follow within seconds, but the person who
 * logs may be some minutes behind. Common practice, no source. */
export const SEQUENCE_LASTS_MS = 5 * 60_000;

export function isCombination(fence: Pick<Fence, "elements">): boolean {
  return fence.elements.length > 1;
}

export function letters(fence: Pick<Fence, "elements">): Letter[] {
  return fence.elements.map((element) => element.letter);
}

/** The attempt that an open sequence at this fence ended with so far, or null where none is open. Any
 * attempt elsewhere, a stop, a fall, a long pause or a decision to leave (`left`) closes a sequence. */
function openAt(fence_id: string, inOrder: readonly Made<Attempt>[], now: number, left: string | null) {
  const last = inOrder.at(-1);
  if (!last || last.body.fence_id !== fence_id || last.body.sequence_id === null) return null;
  const over = last.body.sequence_id === left || now - madeAt(last) > SEQUENCE_LASTS_MS;
  return over ? null : last.body;
}

/** The place of the next tap at this fence. `inOrder`: the outing's attempts, oldest first; `left`: the
 * sequence the person walked away from by choosing another fence. */
export function nextPlace(
  fence_id: string, fence: Pick<Fence, "elements">, inOrder: readonly Made<Attempt>[], now: number, left: string | null = null,
): Place {
  if (!isCombination(fence)) return { element: null, sequence_id: null };
  const all = letters(fence);
  const first = { element: all[0]!, sequence_id: null };
  const open = openAt(fence_id, inOrder, now, left);
  if (!open) return first;
  if (isStop(open.outcome) && open.element) return { element: open.element, sequence_id: null };
  const next = all[all.indexOf(open.element!) + 1];
  if (!wentOver(open.outcome) || next === undefined) return first;
  return { element: next, sequence_id: open.sequence_id };
}

/** The place of a tap at a chosen element: later than the last one of an open sequence it goes on with it
 * (a missed tap is not a new presentation), any other begins a new one. */
export function placeAt(
  chosen: Letter, fence_id: string, fence: Pick<Fence, "elements">, inOrder: readonly Made<Attempt>[], now: number,
  left: string | null = null,
): Place {
  const all = letters(fence);
  const open = openAt(fence_id, inOrder, now, left);
  const goesOn = open && open.element && wentOver(open.outcome) && all.indexOf(chosen) > all.indexOf(open.element);
  return { element: chosen, sequence_id: goesOn ? open.sequence_id : null };
}

/** The sequence open at this fence, for remembering that the person left it. */
export function openSequence(fence_id: string, inOrder: readonly Made<Attempt>[], now: number): string | null {
  return openAt(fence_id, inOrder, now, null)?.sequence_id ?? null;
}
