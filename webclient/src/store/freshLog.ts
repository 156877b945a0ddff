// A browser that dies while it writes may leave half a record at the end of its store's log. Chromium's store
// (LevelDB, its open issue 1287) goes on behind that half record, and at the next start reads nothing that stands
// after it: what was saved in between, and said to be kept, would be gone. Making and deleting an empty database
// has the store write all it holds into a file of its own and begin a new log, in a few milliseconds. Browsers
// with another store lose nothing by it.

import { deleteDB, openDB } from "idb";

const EMPTY = "fresh-log";

/** To be called at each start, before anything is saved that must last. */
export async function beginFreshLog(): Promise<void> {
  (await openDB(EMPTY)).close();
  await deleteDB(EMPTY);
}
