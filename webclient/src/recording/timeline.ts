// The outing as it went: everything that carries a time, in the order in which it was tapped, with the
// elements of one presentation of a combination together.

import type { Attempt } from "../entries/bodies.ts";
import { inOrderMade, madeAt } from "./made.ts";
import type { Made } from "./made.ts";

/** One line of the list: a single attempt, or the attempts of one sequence. */
export interface Presented<R> {
  at_ms: number;
  fence_id: string;
  attempts: R[];
}

/** Oldest first. Attempts that share a sequence and follow each other stand in one line. */
export function presentations<R extends Made<Attempt>>(attempts: readonly R[]): Presented<R>[] {
  const lines: Presented<R>[] = [];
  for (const attempt of inOrderMade(attempts)) {
    const last = lines.at(-1);
    if (last && goesWith(last.attempts.at(-1)!, attempt)) last.attempts.push(attempt);
    else lines.push({ at_ms: madeAt(attempt), fence_id: attempt.body.fence_id, attempts: [attempt] });
  }
  return lines;
}

function goesWith(before: Made<Attempt>, attempt: Made<Attempt>): boolean {
  return attempt.body.sequence_id !== null && before.body.sequence_id === attempt.body.sequence_id;
}
