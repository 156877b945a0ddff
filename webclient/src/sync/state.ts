// How far the records have got, as one value that every screen can put into words.

import { signal } from "@preact/signals";

/** Why the last sync did not finish. Everything is kept in each case. */
export type SyncTrouble =
  | "offline" | "signed_out" | "no_access" | "server_trouble" | "too_many" | "too_old" | "phone_trouble" | "mismatch";

/** What one sync did. */
export interface SyncResult {
  sent: number;
  received: number;
  held: number;
  refused: number;
  forks: number;
  trouble: SyncTrouble | null;
  finished_at_ms: number;
}

export interface SyncState {
  phase: "idle" | "sending" | "fetching" | "photos";
  /** Entries of this account on this phone without a number yet, over all logbooks. */
  waiting: number;
  /** When the oldest of them was recorded. */
  oldest_waiting: string | null;
  /** Photos and voice notes that wait; they go after everything else. */
  photos: number;
  /** Some of them are voice notes. */
  voices: boolean;
  needs_you: number;
  held: number;
  last_sent_at_ms: number | null;
  trouble: SyncTrouble | null;
  /** While sending or fetching: how many of how many. */
  done: number;
  total: number;
  result: SyncResult | null;
}

export const QUIET: SyncState = {
  phase: "idle", waiting: 0, oldest_waiting: null, photos: 0, voices: false, needs_you: 0, held: 0, last_sent_at_ms: null,
  trouble: null, done: 0, total: 0, result: null,
};

export const syncState = signal<SyncState>(QUIET);

export function note(change: Partial<SyncState>): void {
  syncState.value = { ...syncState.value, ...change };
}
