import type { EntryRow, EntryState } from "../../store/db.ts";
import { useLive } from "../../store/live.ts";
import { openDb } from "../../store/place.ts";

export interface SomeEntries {
  entries: EntryRow[];
  /** How many there are in all. */
  count: number;
}

/** The first `most` entries in a state, over all logbooks of the account, oldest first. */
export function useEntries(state: EntryState, most: number): SomeEntries | undefined {
  return useLive(async () => {
    const range = IDBKeyRange.only(state);
    const { entries } = openDb.value!;
    return { count: await entries.countOf("all_state", range), entries: await entries.find("all_state", range, { most }) };
  }, [state, most]);
}
