// What follows a save, once it is on the disk: a second copy is made of it, the promise of storage is asked for,
// and sending begins.

import type { RecordRow } from "./db.ts";
import { askToPersistOnce } from "./persist.ts";
import type { Place } from "./place.ts";
import { keepSpare } from "./spare.ts";

const listeners = new Set<() => void>();

/** `listener` runs after every save. */
export function onSaved(listener: () => void): void {
  listeners.add(listener);
}

/** `row`: the record as it now stands, where one was written; what came from a copy has its copy there. */
export function afterSave({ db, logbook_id }: Place, row?: RecordRow): void {
  if (row) keepSpare(db, logbook_id, row.heads).catch((error) => console.error("no second copy was kept", error));
  askToPersistOnce(db).catch((error) => console.error("asking to keep the storage failed", error));
  for (const listener of listeners) listener();
}
