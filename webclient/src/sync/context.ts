// What one sync of one logbook works with; tests give it a pretend server and a clock.

import type { PhoneDb } from "../store/db.ts";
import type { Wire } from "./wire.ts";

export const PROTOCOL = 1;

export interface Tally {
  sent: number;
  received: number;
  held: number;
  refused: number;
  forks: number;
}

export interface SyncContext {
  db: PhoneDb;
  wire: Wire;
  logbook_id: string;
  /** Whose entries these are: the server takes none of them as somebody else's. */
  account_id?: string;
  device: string;
  app: string;
  tally: Tally;
  /** Told as it goes on: sending or fetching, how many of how many. */
  progress: (phase: "sending" | "fetching", done: number, total: number) => void;
  now: () => number;
}

export function emptyTally(): Tally {
  return { sent: 0, received: 0, held: 0, refused: 0, forks: 0 };
}

export function entriesPath(context: SyncContext): string {
  return `/api/logbooks/${context.logbook_id}/entries`;
}
