// Where we are: the open database and the logbook on screen. Set by the start and by switching logbooks.

import { signal } from "@preact/signals";

import type { PhoneDb } from "./db.ts";

export const openDb = signal<PhoneDb | null>(null);
export const logbookId = signal<string | null>(null);
export const me = signal<Person | null>(null);

export interface Place {
  db: PhoneDb;
  logbook_id: string;
  me: Person;
}

/** Who writes here; the server decides the author of an entry by the session, this is for the screens. */
export interface Person {
  id: string;
  display_name: string;
}

export class NoPlace extends Error {
  override name = "NoPlace";
}

/** The open database and the current logbook; throws NoPlace before both are there. */
export function here(): Place {
  const db = openDb.value;
  const id = logbookId.value;
  if (!db || !id || !me.value) throw new NoPlace("no logbook is open");
  return { db, logbook_id: id, me: me.value };
}
