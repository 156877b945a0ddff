// What happened at a fence today, counted.

import type { Attempt, Fence, Outcome } from "../entries/bodies.ts";
import { isCombination, letters } from "./combination.ts";
import type { Letter } from "./combination.ts";
import type { Made } from "./made.ts";

/** Outcomes that occurred, with how often, in the order of first occurrence but clear always first. */
export type Tally = { outcome: Outcome; count: number }[];

export function tallyOf(attempts: readonly Made<Attempt>[]): Tally {
  const counts = new Map<Outcome, number>();
  for (const { body } of attempts) counts.set(body.outcome, (counts.get(body.outcome) ?? 0) + 1);
  const tally = [...counts].map(([outcome, count]) => ({ outcome, count }));
  return tally.sort((a, b) => Number(b.outcome === "clear") - Number(a.outcome === "clear"));
}

export function countOf(tally: Tally, outcome: Outcome): number {
  return tally.find((line) => line.outcome === outcome)?.count ?? 0;
}

export function byFence<R extends Made<Attempt>>(attempts: readonly R[]): Map<string, R[]> {
  const groups = new Map<string, R[]>();
  for (const attempt of attempts) {
    const group = groups.get(attempt.body.fence_id);
    if (group) group.push(attempt);
    else groups.set(attempt.body.fence_id, [attempt]);
  }
  return groups;
}

export function atElement<R extends Made<Attempt>>(attempts: readonly R[], element: Letter | null): R[] {
  return attempts.filter((attempt) => attempt.body.element === element);
}

/** Presentations in which every element of the combination was met and clear. */
export function clearThroughout(fence: Pick<Fence, "elements">, attempts: readonly Made<Attempt>[]): number {
  if (!isCombination(fence)) return 0;
  const sequences = new Map<string, Made<Attempt>[]>();
  for (const attempt of attempts) {
    const id = attempt.body.sequence_id;
    if (id) sequences.set(id, [...(sequences.get(id) ?? []), attempt]);
  }
  return [...sequences.values()].filter((sequence) => isClearThroughout(fence, sequence)).length;
}

function isClearThroughout(fence: Pick<Fence, "elements">, sequence: readonly Made<Attempt>[]): boolean {
  const met = new Set(sequence.map((attempt) => attempt.body.element));
  return letters(fence).every((letter) => met.has(letter)) && sequence.every((attempt) => attempt.body.outcome === "clear");
}
