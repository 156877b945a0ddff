// Which fences an outing shows, in which order, and which of them a filter leaves.

import type { Ask, Attempt, Fence, Outing } from "../entries/bodies.ts";
import { asksOf } from "./asks.ts";
import { madeAt } from "./made.ts";
import type { Made } from "./made.ts";

export interface FenceFilter {
  ask: Ask | null;
  search: string;
  favourites: boolean;
}

export const NO_FILTER: FenceFilter = { ask: null, search: "", favourites: false };

/** Riding order: by place in the list; those without a place after them, by label ("2" before "10"). */
export function inRidingOrder<R extends Made<Fence>>(fences: readonly R[]): R[] {
  return [...fences].sort((a, b) => place(a) - place(b) || byLabel(a, b));
}

const place = (fence: Made<Fence>): number => fence.body.order ?? Number.MAX_SAFE_INTEGER;

function byLabel(a: Made<Fence>, b: Made<Fence>): number {
  return a.body.label.localeCompare(b.body.label, undefined, { numeric: true }) || (a.record_id < b.record_id ? -1 : 1);
}

type Dated<Body> = Made<Body> & { local_date: string };

/** The outing's fences: those of its field, those made up on the spot while it was ridden or written down,
 * those met in it, and the one that is `chosen`. */
export function fencesOfOuting<R extends Dated<Fence>>(
  fences: readonly R[], outing: Dated<Outing>, attempts: readonly Made<Attempt>[], chosen: string | null = null,
): R[] {
  const named = new Set([...attempts.map((attempt) => attempt.body.fence_id), chosen]);
  const belong = fences.filter((fence) => named.has(fence.record_id) || belongs(fence, outing));
  const madeUp = belong.filter((fence) => fence.body.field_id === null).sort((a, b) => madeAt(a) - madeAt(b));
  return [...inRidingOrder(belong.filter((fence) => fence.body.field_id !== null)), ...madeUp];
}

function belongs(fence: Dated<Fence>, outing: Dated<Outing>): boolean {
  const { field_id } = fence.body;
  return field_id === null ? [outing.body.date, outing.local_date].includes(fence.local_date) : field_id === outing.body.field_id;
}

/** Lower case, without accents, one space between words: what a hurried search should not depend on. */
export function plain(text: string): string {
  return text.normalize("NFD").replace(/\p{Diacritic}/gu, "").toLowerCase().replace(/\s+/g, " ").trim();
}

/** Fences left by the filter. `wordsOf` gives what else a fence is called: its profile and asks in words. */
export function matching<R extends Made<Fence>>(
  fences: readonly R[], filter: FenceFilter, wordsOf: (fence: Fence) => string,
): R[] {
  const wanted = plain(filter.search).split(" ").filter(Boolean);
  return fences.filter(({ body }) => {
    if (filter.favourites && !body.favourite) return false;
    if (filter.ask && !everythingAsked(body).has(filter.ask)) return false;
    const text = plain(`${body.label} ${wordsOf(body)} ${body.notes ?? ""}`);
    return wanted.every((word) => text.includes(word));
  });
}

/** What the fence and its elements ask, together. */
export function everythingAsked(fence: Fence): Set<Ask> {
  const whole: Ask[] = fence.elements.length > 1 ? ["combination"] : [];
  return new Set([...whole, ...asksOf(fence), ...fence.elements.flatMap(asksOf)]);
}

/** The asks that occur among these fences, each with how many ask it: the only filters worth showing. */
export function asksAmong(fences: readonly Made<Fence>[], vocabulary: readonly Ask[]): { ask: Ask; count: number }[] {
  const asked = fences.map((fence) => everythingAsked(fence.body));
  return vocabulary.map((ask) => ({ ask, count: asked.filter((set) => set.has(ask)).length })).filter(({ count }) => count);
}

/** Starred fences before the others, each in the order they had. */
export function favouritesFirst<R extends Made<Fence>>(fences: readonly R[]): R[] {
  return [...fences].sort((a, b) => Number(b.body.favourite) - Number(a.body.favourite));
}
