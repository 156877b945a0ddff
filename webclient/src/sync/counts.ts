// Keeps the counts in the sync state in step with the store, in every tab.

import type { EntryState, PhoneDb } from "../store/db.ts";
import { keepAsking } from "../store/live.ts";
import { startingWith } from "../store/table.ts";
import { waitingMedia } from "./mediaWaiting.ts";
import { note, type SyncState } from "./state.ts";

type Counts = Pick<SyncState, "waiting" | "oldest_waiting" | "photos" | "voices" | "needs_you" | "held">;

/** Follows the store until the returned function is called. */
export function followCounts(db: PhoneDb): () => void {
  return keepAsking(db, () => countAll(db), note);
}

export async function countAll(db: PhoneDb): Promise<Counts> {
  const inState = (state: EntryState) => db.entries.countOf("all_state", IDBKeyRange.only(state));
  const [waiting, held, refused, forks, media] = await Promise.all([inState("here"), inState("held"), inState("needs_you"), countForks(db), waitingMedia(db)]);
  return { waiting, held, photos: media.length, voices: media.some(({ media_type }) => media_type.startsWith("audio")), needs_you: refused + forks, oldest_waiting: waiting ? await oldest(db) : null };
}

// only forked records are in this index
function countForks(db: PhoneDb): Promise<number> {
  return db.records.countOf("forked", IDBKeyRange.lowerBound([]));
}

// ids sort by the time they were made, so the first of each logbook is its oldest
async function oldest(db: PhoneDb): Promise<string | null> {
  const logbooks = await db.entries.leads("state");
  const firsts = await Promise.all(logbooks.map((id) => db.entries.find("state", startingWith(id, "here"), { most: 1 })));
  return firsts.flat().map((entry) => entry.recorded_at).sort()[0] ?? null;
}
