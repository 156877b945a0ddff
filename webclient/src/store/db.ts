// The phone's database: one per account. Entries are the truth and the outbox (what has no number yet);
// records are what the entries add up to, kept in the same transaction so that screens can ask by index.

import Dexie, { type Table } from "dexie";

import type { Entry, Numbering } from "../entries/entry.ts";
import type { Fork } from "../entries/fold.ts";
import type { Plain } from "../entries/merge.ts";

/** here: waits to be sent. sent: numbered. held: the server keeps it unread. needs_you: refused. */
export type EntryState = "here" | "sent" | "held" | "needs_you";

/** Why the server refused an entry, in its own words. */
export interface Refusal {
  code: string;
  field: string | null;
  message: string;
  fix: string | null;
}

/** An entry as sent or received, with what only this phone knows of it. */
export interface EntryRow extends Entry, Numbering {
  logbook_id: string;
  state: EntryState;
  refusal?: Refusal;
  /** The server failed on this entry alone: how often, and not before when (ms since 1970) to try again. */
  failures?: number;
  retry_at_ms?: number;
}

/** The kind while the record lives; `gone` when taken back; `unread` when this release cannot read it. */
export type Shelf = string;

export interface RecordRow {
  logbook_id: string;
  record_id: string;
  kind: string;
  shelf: Shelf;
  body: Plain | null;
  /** The day it is about: the body's date, else the day it was written down. */
  day: string;
  local_date: string;
  recorded_at: string;
  number: number | null;
  author: string | null;
  author_name: string | null;
  heads: string[];
  state: EntryState;
  fork: Fork | null;
  /** 1 when a fork waits to be settled: an index holds no booleans. */
  forked?: 1;
  outing_id?: string;
  fence_id?: string;
  horse_id?: string;
  field_id?: string;
  track_id?: string;
  about_id?: string;
}

export interface StandingRow {
  logbook_id: string;
  horse_id: string;
  rulebook_id: string;
  level_id: string;
  standing: Plain;
}

export interface RulebookRow {
  id: string;
  digest: string;
  rulebook: Plain;
}

export interface MetaRow {
  key: string;
  value: unknown;
}

export interface DraftRow {
  key: string;
  text: string;
  saved_at_ms: number;
}

/** A stopwatch run in progress: whatever the stopwatch keeps, under its id. */
export interface RunRow {
  id: string;
  [more: string]: unknown;
}

// An index on `shelf` finds living records of a kind and leaves the others out, as `kind` would not.
const STORES = {
  entries: "[logbook_id+id], [logbook_id+number], [logbook_id+record_id], [logbook_id+state+id], state",
  records: `[logbook_id+record_id], [logbook_id+shelf+day], [logbook_id+shelf+outing_id],
    [logbook_id+shelf+fence_id], [logbook_id+shelf+horse_id], [logbook_id+shelf+field_id],
    [logbook_id+shelf+track_id], [logbook_id+shelf+about_id], [logbook_id+about_id], [logbook_id+forked]`,
  standings: "[logbook_id+horse_id+rulebook_id+level_id]",
  rulebooks: "id",
  meta: "key",
  drafts: "key",
  runs: "id",
};

export class PhoneDb extends Dexie {
  entries!: Table<EntryRow, [string, string]>;
  records!: Table<RecordRow, [string, string]>;
  standings!: Table<StandingRow, [string, string, string, string]>;
  rulebooks!: Table<RulebookRow, string>;
  meta!: Table<MetaRow, string>;
  drafts!: Table<DraftRow, string>;
  runs!: Table<RunRow, string>;

  constructor(accountId: string) {
    // strict: a transaction is complete only when it is on the disk; without the cache a screen never
    // shows what is not yet there
    super(nameFor(accountId), { chromeTransactionDurability: "strict", cache: "disabled" });
    this.version(1).stores(STORES);
  }
}

export const NAME_PREFIX = "fieldtally-";

export function nameFor(accountId: string): string {
  return NAME_PREFIX + accountId;
}

export async function getMeta<T>(db: PhoneDb, key: string): Promise<T | undefined> {
  return (await db.meta.get(key))?.value as T | undefined;
}

export async function setMeta(db: PhoneDb, key: string, value: unknown): Promise<void> {
  await db.meta.put({ key, value });
}
