// The phone's database: one per account. Entries are the truth and the outbox (what has no number yet);
// records are what the entries add up to, kept in the same transaction so that screens can ask by index.

import { type IDBPDatabase, openDB, type OpenDBCallbacks } from "idb";

import type { Entry, Numbering } from "../entries/entry.ts";
import type { Fork } from "../entries/fold.ts";
import type { Plain } from "../entries/merge.ts";
import { connect, type Link } from "./link.ts";
import { type Reach, Table } from "./table.ts";

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

/** A photo or voice note of which this phone has the bytes. here: waits to be sent. sent: the server has it. */
export interface MediaRow {
  logbook_id: string;
  sha256: string;
  media_type: string;
  size_bytes: number;
  state: "here" | "sent";
  /** The server would not have it: its code, and not before when (ms since 1970) to try again. */
  refusal?: string;
  retry_at_ms?: number;
}

/** Apart from the rows, so that counting and listing never reads megabytes. */
export interface MediaBytesRow {
  logbook_id: string;
  sha256: string;
  bytes: ArrayBuffer;
}

type Schema = Record<string, { key: string | string[]; indexes: Record<string, string | string[]> }>;

// An index on `shelf` finds living records of a kind and leaves the others out, as `kind` would not.
const LINKED = ["outing_id", "fence_id", "horse_id", "field_id", "track_id", "about_id"] as const;
const SCHEMA = {
  entries: {
    key: ["logbook_id", "id"],
    indexes: { number: ["logbook_id", "number"], record: ["logbook_id", "record_id"], state: ["logbook_id", "state", "id"], all_state: "state" },
  },
  records: {
    key: ["logbook_id", "record_id"],
    indexes: {
      day: ["logbook_id", "shelf", "day"], about: ["logbook_id", "about_id"], forked: ["logbook_id", "forked"],
      ...Object.fromEntries(LINKED.map((link) => [link, ["logbook_id", "shelf", link]])),
    },
  },
  standings: { key: ["logbook_id", "horse_id", "rulebook_id", "level_id"], indexes: {} },
  rulebooks: { key: "id", indexes: {} },
  meta: { key: "key", indexes: {} },
  drafts: { key: "key", indexes: {} },
  runs: { key: "id", indexes: {} },
  media: { key: ["logbook_id", "sha256"], indexes: { state: "state" } },
  media_bytes: { key: ["logbook_id", "sha256"], indexes: {} },
} satisfies Schema;

export type TableName = keyof typeof SCHEMA;

/** What can befall an open database from outside. */
export interface Befalls {
  /** Another tab holds an older version open. */
  blocked?: () => void;
  /** Another tab wants to go on to a newer version: this connection was closed for it. */
  outdated?: () => void;
  /** The browser closed it by itself. */
  lost?: () => void;
}

/** The tables, and transactions over several of them. */
export class PhoneDb {
  name: string;
  entries: Table<EntryRow, [string, string]>;
  records: Table<RecordRow, [string, string]>;
  standings: Table<StandingRow, [string, string, string, string]>;
  rulebooks: Table<RulebookRow, string>;
  meta: Table<MetaRow, string>;
  drafts: Table<DraftRow, string>;
  runs: Table<RunRow, string>;
  media: Table<MediaRow, [string, string]>;
  media_bytes: Table<MediaBytesRow, [string, string]>;
  #link: Link;

  constructor(name: string, link: Link) {
    this.name = name;
    this.#link = link;
    const reach: Reach = (table, mode, work) => link.run([table as TableName], mode, (stores) => work(stores[0]!));
    this.entries = new Table("entries", reach);
    this.records = new Table("records", reach);
    this.standings = new Table("standings", reach);
    this.rulebooks = new Table("rulebooks", reach);
    this.meta = new Table("meta", reach);
    this.drafts = new Table("drafts", reach);
    this.runs = new Table("runs", reach);
    this.media = new Table("media", reach);
    this.media_bytes = new Table("media_bytes", reach);
  }

  /** All of `work` or nothing: resolves when it is on the disk. `work` must use the database it is given and
   * wait for nothing else. Inside another transaction it takes part in that one. */
  transaction<T>(tables: TableName[], work: (inside: PhoneDb) => Promise<T>): Promise<T> {
    return this.#link.together(tables, (link) => work(new PhoneDb(this.name, link)));
  }

  close(): void {
    this.#link.close();
  }

  /** A new connection in place of one that was lost. */
  reopen(): Promise<void> {
    return this.#link.reopen();
  }
}

export async function openPhoneDb(accountId: string, befalls: Befalls = {}): Promise<PhoneDb> {
  const name = nameFor(accountId);
  return new PhoneDb(name, await connect(() => openDB(name, VERSION, callbacks(befalls)), name));
}

// 2: photos and voice notes
const VERSION = 2;

function callbacks({ blocked, outdated, lost }: Befalls): OpenDBCallbacks<unknown> {
  return {
    upgrade: makeTables,
    ...(blocked && { blocked }),
    blocking: (_, __, event) => {
      (event.target as IDBDatabase).close();
      outdated?.();
    },
    ...(lost && { terminated: lost }),
  };
}

// what an older version made stays as it is; tables that came later are added beside it
function makeTables(db: IDBPDatabase<unknown>): void {
  for (const [name, { key, indexes }] of Object.entries(SCHEMA as Schema)) {
    if ((db.objectStoreNames as DOMStringList).contains(name)) continue;
    const store = db.createObjectStore(name, { keyPath: key });
    for (const [index, path] of Object.entries(indexes)) store.createIndex(index, path);
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
