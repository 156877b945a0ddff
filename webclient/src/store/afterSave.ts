// What follows a save, once it is on the disk: the promise of storage is asked for, and sending begins.

import { askToPersistOnce } from "./persist.ts";
import type { Place } from "./place.ts";

const listeners = new Set<() => void>();

/** `listener` runs after every save. */
export function onSaved(listener: () => void): void {
  listeners.add(listener);
}

export function afterSave(place: Place): void {
  askToPersistOnce(place.db).catch((error) => console.error("asking to keep the storage failed", error));
  for (const listener of listeners) listener();
}
