// Keeps the counts in the sync state in step with the store, in every tab.

import Dexie, { liveQuery } from "dexie";

import { getMeta, type PhoneDb } from "../store/db.ts";
import { note, type SyncState } from "./state.ts";

type Counts = Pick<SyncState, "waiting" | "oldest_waiting" | "needs_you" | "held" | "last_sent_at_ms">;

/** Follows the store until the returned function is called. */
export function followCounts(db: PhoneDb): () => void {
  const counting = liveQuery(() => countAll(db)).subscribe({
    next: (counts) => note(counts),
    error: (error) => console.error("counting failed", error),
  });
  return () => counting.unsubscribe();
}

export async function countAll(db: PhoneDb): Promise<Counts> {
  const inState = (state: string) => db.entries.where("state").equals(state);
  const [waiting, held, refused, forks] = await Promise.all([
    inState("here").count(), inState("held").count(), inState("needs_you").count(), countForks(db),
  ]);
  const last_sent_at_ms = (await getMeta<number>(db, "last_sent_at_ms")) ?? null;
  return { waiting, held, needs_you: refused + forks, oldest_waiting: waiting ? await oldest(db) : null, last_sent_at_ms };
}

async function countForks(db: PhoneDb): Promise<number> {
  return db.records.orderBy("[logbook_id+forked]").count();
}

// ids sort by the time they were made, so the first of each logbook is its oldest
async function oldest(db: PhoneDb): Promise<string | null> {
  const books = (await db.entries.orderBy("[logbook_id+state+id]").uniqueKeys()) as unknown as [string, string, string][];
  const ids = new Set(books.map(([logbook_id]) => logbook_id));
  const firsts = await Promise.all([...ids].map((id) => db.entries.where("[logbook_id+state+id]").between([id, "here", Dexie.minKey], [id, "here", Dexie.maxKey]).first()));
  return firsts.flatMap((entry) => (entry ? [entry.recorded_at] : [])).sort()[0] ?? null;
}
