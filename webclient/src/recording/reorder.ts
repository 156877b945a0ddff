// Moving a fence one place up or down the riding order, by buttons.

import type { Fence } from "../entries/bodies.ts";
import type { Made } from "./made.ts";

export interface Moved {
  record_id: string;
  order: number;
}

/** The places to write so that the fence at `index` moves by `by` (-1 up, +1 down). `fences` is the list as
 * shown. Two places change where every fence has its own; where some have none, all are numbered anew. */
export function move(fences: readonly Made<Fence>[], index: number, by: -1 | 1): Moved[] {
  const other = index + by;
  if (index < 0 || other < 0 || index >= fences.length || other >= fences.length) return [];
  const order = fences.map((fence) => fence.record_id);
  [order[index], order[other]] = [order[other]!, order[index]!];
  const places = placesOf(fences);
  return order.flatMap((record_id, at) => (isAt(fences, record_id, places[at]!) ? [] : [{ record_id, order: places[at]! }]));
}

function isAt(fences: readonly Made<Fence>[], record_id: string, order: number): boolean {
  return fences.find((fence) => fence.record_id === record_id)!.body.order === order;
}

/** The places that are there, if they rise; else 1, 2, 3 … */
function placesOf(fences: readonly Made<Fence>[]): number[] {
  const places = fences.map((fence) => fence.body.order);
  const rises = places.every((place, at) => place !== null && (at === 0 || place > places[at - 1]!));
  return rises ? (places as number[]) : places.map((_, at) => at + 1);
}

/** The place after the last, for a fence that is being added. */
export function nextOrder(fences: readonly Made<Fence>[]): number {
  return Math.floor(Math.max(0, ...fences.map((fence) => fence.body.order ?? 0))) + 1;
}
