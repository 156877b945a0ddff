// Everything the recording screen shows of one outing, from the phone itself.

import { useEffect } from "preact/hooks";

import { inOrderMade } from "../../recording/made.ts";
import { fencesOfOuting } from "../../recording/fenceList.ts";
import { type Seen, withTaps } from "../../recording/taps.ts";
import { type SavedRecord, useRecord, useRecords, useWhetherHere } from "../../store/book.ts";
import { lastKnown } from "../../recording/lastKnown.ts";
import { logbookId } from "../../store/place.ts";
import { forgetKept, hidden, taps } from "./recorder.ts";

export type SeenAttempt = Seen<SavedRecord<"attempt">>;

export interface OutingView {
  outing: SavedRecord<"outing">;
  horse: SavedRecord<"horse"> | undefined;
  field: SavedRecord<"field"> | undefined;
  /** In riding order, those made up on the spot last. */
  fences: SavedRecord<"fence">[];
  /** Oldest first, with taps that are still being saved. */
  attempts: SeenAttempt[];
}

/** The outing, "loading", or "missing" when this phone does not have it. */
export function useOuting(id: string, chosen: string | null = null): OutingView | "loading" | "missing" {
  const whether = useWhetherHere("outing", id);
  const logbook = logbookId.value;
  const outing = lastKnown(`${logbook} outing ${id}`, useRecord("outing", id));
  const kept = lastKnown(`${logbook} attempts ${id}`, useRecords("attempt", { outing_id: id }));
  const fences = lastKnown(`${logbook} fences`, useRecords("fence"));
  const horse = lastKnown(`${logbook} horse ${id}`, useRecord("horse", outing?.body.horse_id ?? ""));
  const field = lastKnown(`${logbook} field ${id}`, useRecord("field", outing?.body.field_id ?? ""));
  useEffect(() => kept && forgetKept(new Set(kept.map((attempt) => attempt.record_id))), [kept]);
  if (whether === "missing") return "missing";
  if (!outing || !kept || !fences) return "loading";
  const attempts = inOrderMade(withTaps(kept, taps.value, id, hidden.value));
  return { outing, horse, field, attempts, fences: fencesOfOuting(fences, outing, attempts, chosen) };
}
