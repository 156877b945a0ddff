// An outing as the coach reads it: attempts (a combination's elements together), canters and everything
// said, in the order in which it happened, each remark beside what it is about.

import type { Attempt, Note, Remark, TimedCanter } from "../entries/bodies.ts";
import { madeAt, type Made } from "../recording/made.ts";
import { presentations } from "../recording/timeline.ts";

export type Item<A extends Made<Attempt>, C extends Made<TimedCanter>> =
  | { what: "attempts"; at_ms: number; fence_id: string; attempts: A[] }
  | { what: "canter"; at_ms: number; canter: C };

/** Oldest first; attempts at one fence that follow each other stand together. */
export function outingTimeline<A extends Made<Attempt>, C extends Made<TimedCanter>>(
  attempts: readonly A[],
  canters: readonly C[],
): Item<A, C>[] {
  const ridden = presentations(attempts).map((line) => ({ what: "attempts" as const, ...line }));
  const timed = canters.map((canter) => ({ what: "canter" as const, at_ms: madeAt(canter), canter }));
  return together([...ridden, ...timed].sort((a, b) => a.at_ms - b.at_ms));
}

function together<A extends Made<Attempt>, C extends Made<TimedCanter>>(items: Item<A, C>[]): Item<A, C>[] {
  const kept: Item<A, C>[] = [];
  for (const item of items) {
    const last = kept.at(-1);
    if (last?.what === "attempts" && item.what === "attempts" && last.fence_id === item.fence_id) last.attempts.push(...item.attempts);
    else kept.push(item);
  }
  return kept;
}

/** The records an item is about: what is said of any of them stands under it. */
export function aboutIds(item: Item<Made<Attempt>, Made<TimedCanter>>): string[] {
  return item.what === "attempts" ? item.attempts.map((attempt) => attempt.record_id) : [item.canter.record_id];
}

export function isAllClear(item: Item<Made<Attempt>, Made<TimedCanter>>): boolean {
  return item.what === "canter" || item.attempts.every((attempt) => attempt.body.outcome === "clear");
}

/** Notes and remarks on a record, oldest first. */
export function saidOf<S extends Made<Note | Remark>>(said: readonly S[], ids: readonly string[]): S[] {
  return said.filter((each) => ids.includes(each.body.about_id)).sort((a, b) => a.recorded_at.localeCompare(b.recorded_at));
}
