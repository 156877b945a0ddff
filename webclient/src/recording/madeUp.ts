// A fence made up on the spot: a log by the track that is in no field's list.

import type { Ask, Fence, Profile } from "../entries/bodies.ts";
import { bodyOf, emptyForm, NO_REST, withDimension, withProfile } from "./fenceForm.ts";
import type { Typed } from "./fenceForm.ts";
import { firstDimensions } from "./dimensions.ts";
import type { Dimension } from "./dimensions.ts";
import type { Made } from "./made.ts";

export interface MadeUp {
  profile: Profile;
  asks: Ask[];
  asks_ticked: boolean;
  label: string;
  height: Typed;
  /** The field whose list it joins for good, or null to keep it to this outing. */
  field_id: string | null;
  order: number | null;
}

/** The one dimension to ask for on the spot: how high, or for a ditch how wide, for a drop how deep. */
export function mainDimension(profile: Profile): Dimension {
  return firstDimensions(profile)[0]!;
}

export function madeUpBody(made: MadeUp, wordOf: (profile: Profile) => string, others: readonly Made<Fence>[]): Fence {
  const form = withDimension(withProfile(emptyForm(), made.profile), mainDimension(made.profile), made.height);
  const label = made.label.trim() || freeLabel(wordOf(made.profile), others);
  const asks = made.asks_ticked ? made.asks : form.asks;
  return bodyOf({ ...form, label, asks }, { ...NO_REST, field_id: made.field_id, order: made.order });
}

/** "Log", then "Log 2", "Log 3": a name nobody in the list has yet. */
export function freeLabel(word: string, others: readonly Made<Fence>[]): string {
  const taken = new Set(others.map((fence) => fence.body.label));
  if (!taken.has(word)) return word;
  let number = 2;
  while (taken.has(`${word} ${number}`)) number += 1;
  return `${word} ${number}`;
}
