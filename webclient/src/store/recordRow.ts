// A record as the screens find it: what its entries fold to, laid out for the indexes.

import type { Folded } from "../entries/fold.ts";
import type { EntryRow, EntryState, RecordRow } from "./db.ts";

const LINKS = ["outing_id", "fence_id", "horse_id", "field_id", "track_id", "about_id"] as const;
export type Link = (typeof LINKS)[number];

// what a person has to know first comes last
const STATES: EntryState[] = ["sent", "here", "held", "needs_you"];

export function worstState(heads: Pick<EntryRow, "state">[]): EntryState {
  return STATES[Math.max(0, ...heads.map((head) => STATES.indexOf(head.state)))]!;
}

export function recordRow(logbook_id: string, folded: Folded, state: EntryState): RecordRow {
  const { unreadable, ...kept } = folded;
  const shelf = unreadable ? "unread" : folded.body === null ? "gone" : folded.kind;
  const row: RecordRow = { ...kept, logbook_id, shelf, state, day: dayOf(folded) };
  if (folded.fork) row.forked = 1;
  for (const link of LINKS) {
    const id = folded.body?.[link];
    if (typeof id === "string") row[link] = id;
  }
  return row;
}

function dayOf(folded: Folded): string {
  const date = folded.body?.date;
  return typeof date === "string" ? date : folded.local_date;
}
