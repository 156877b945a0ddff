// What a tap makes: a plain attempt, ready to be saved.

import type { Attempt, Outcome } from "../entries/bodies.ts";
import type { Place } from "./combination.ts";
import type { Manner } from "./manner.ts";

export interface Tapped {
  outing_id: string;
  fence_id: string;
  outcome: Outcome;
  place: Place;
  manner: Manner;
  height_cm?: number | null;
}

/** `newId` gives the id of a sequence that this attempt begins. */
export function makeAttempt(tapped: Tapped, newId: () => string): Attempt {
  const { place, manner } = tapped;
  return {
    outing_id: tapped.outing_id,
    fence_id: tapped.fence_id,
    element: place.element,
    sequence_id: place.element === null ? null : (place.sequence_id ?? newId()),
    outcome: tapped.outcome,
    presentation: { ...manner.presentation },
    attitude: manner.attitude,
    height_cm: tapped.height_cm ?? null,
    canter_id: null,
    canter_offset_ms: null,
    note: null,
  };
}
