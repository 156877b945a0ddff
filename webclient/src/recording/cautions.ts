// When the person must be told to stop, or told what to mind before starting.

import type { Attempt, Outing } from "../entries/bodies.ts";
import type { Made } from "./made.ts";
import { isFall } from "./outcomes.ts";

/** The falls of an outing, oldest first as given. */
export function fallsAmong<R extends Made<Attempt>>(attempts: readonly R[]): R[] {
  return attempts.filter((attempt) => isFall(attempt.body.outcome));
}

/** Whether nobody has logged any other outing in this book as far as this phone knows. */
export function isFirstOuting(outings: readonly Made<Outing>[], outing_id: string): boolean {
  return outings.every((outing) => outing.record_id === outing_id);
}
