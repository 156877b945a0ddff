import type { EntryRow, EntryState, PhoneDb } from "./db.ts";

export const UNSENT: EntryState[] = ["here", "held", "needs_you"];

/** Every entry that is not numbered by the server, over all logbooks of the account. */
export async function unsentEntries(db: PhoneDb): Promise<EntryRow[]> {
  return (await Promise.all(UNSENT.map((state) => db.entries.find("all_state", IDBKeyRange.only(state))))).flat();
}
