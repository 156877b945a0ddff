// The outings as today's screen needs them: the newest first, and which are still open.

import { civilDate } from "../../entries/entry.ts";
import type { Outing } from "../../entries/bodies.ts";
import type { SavedRecord } from "../../store/book.ts";
import { useNewest } from "../../store/book.ts";

const SHOWN = 30;
const DAY_MS = 86_400_000;

export function useNewestOutings(): SavedRecord<"outing">[] | undefined {
  return useNewest("outing", SHOWN);
}

/** An outing of today or yesterday (nights happen) that nobody finished and that was not written down later. */
export function isOpenNow(outing: Outing, now: Date = new Date()): boolean {
  const yesterday = civilDate(new Date(now.getTime() - DAY_MS));
  return !outing.closed && !outing.from_memory && outing.date >= yesterday;
}
