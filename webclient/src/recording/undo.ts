// Which tap the undo button takes back: the person's own newest, again and again back to the first. It
// follows from what is kept, so it works after a killed page too.

import type { Attempt } from "../entries/bodies.ts";
import { inOrderMade, madeAt } from "./made.ts";
import type { Made } from "./made.ts";

/** The button is for the day's taps; older ones are taken back from the list. */
export const UNDO_REACHES_MS = 12 * 3_600_000;

/** `author` undefined: a tap that is still being saved, so this person's. Somebody else's taps (the scribe
 * on another phone) are not undone by accident. */
export function newestOwn<R extends Made<Attempt> & { author?: string | null }>(
  attempts: readonly R[], me: string | null, now: number,
): R | null {
  const own = attempts.filter(({ author }) => author === undefined || author === null || author === me);
  const newest = inOrderMade(own).at(-1);
  return newest && now - madeAt(newest) < UNDO_REACHES_MS ? newest : null;
}
