// Attempts of an outing that were taken back. Nothing is erased by taking back, so any of them can return.

import type { Attempt } from "../../entries/bodies.ts";
import { useLive } from "../../store/live.ts";
import { here } from "../../store/place.ts";
import { findSince, lastBody } from "../../store/read.ts";
import type { SavedRecord } from "../../store/book.ts";

export interface Gone {
  record_id: string;
  recorded_at: string;
  /** What it said last. */
  body: Attempt;
}

/** Newest first; undefined while loading. */
export function useBin(outing: SavedRecord<"outing">): Gone[] | undefined {
  return useLive(() => findGone(outing.record_id, outing.local_date), [outing.record_id, outing.local_date]);
}

/** An attempt is written down on the day of its outing's record or later, never before. */
async function findGone(outing_id: string, since: string): Promise<Gone[]> {
  const rows = await findSince(here(), "gone", since);
  const attempts = rows.filter((row) => row.kind === "attempt");
  const found = await Promise.all(attempts.map(({ record_id, recorded_at }) => lastBody(here(), record_id).then((body) => ({ record_id, recorded_at, body: body as unknown as Attempt | null }))));
  const mine = found.filter((each): each is Gone => each.body?.outing_id === outing_id);
  return mine.sort((a, b) => (a.recorded_at < b.recorded_at ? 1 : -1));
}
