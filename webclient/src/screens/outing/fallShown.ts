// After a fall is stored, the notice to stop takes the whole screen until it has been read.

import { signal } from "@preact/signals";

import type { TapState } from "../../recording/taps.ts";

export interface ShownFall {
  record_id: string;
  outing_id: string;
}

export const shownFall = signal<ShownFall | null>(null);

/** The notice does not wait for ever: a store that does not answer must not keep it back. */
const LONGEST_WAIT_MS = 1500;

export function showStopNotice(record_id: string, outing_id: string, stored: Promise<TapState>): void {
  const waited = new Promise((resolve) => setTimeout(resolve, LONGEST_WAIT_MS));
  void Promise.race([stored, waited]).then(() => (shownFall.value = { record_id, outing_id }));
}
