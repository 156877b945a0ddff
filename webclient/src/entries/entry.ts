// One entry of a logbook: made here, never changed, sent as it is. An edit, an undo, a taking back are
// further entries that supersede earlier ones. docs/protocol.md describes each field.

import { type BodyInputs, KINDS, type KindName } from "./bodies.ts";
import { uuid7 } from "./uuid7.ts";

/** The two clocks of the phone when the entry was made, in ms: wall since 1970, monotonic since the page began. */
export interface Clock {
  wall_ms: number;
  monotonic_ms: number;
}

export interface Entry {
  id: string;
  record_id: string;
  supersedes: string[];
  kind: string;
  kind_version: number;
  /** Null takes the record back. */
  body: object | null;
  recorded_at: string;
  utc_offset_min: number;
  /** The civil day in the field, stored and never derived later. */
  local_date: string;
  clock: Clock | null;
}

/** What the server adds in numbering an entry; a phone that sends its copy again sends these too. */
export interface Numbering {
  number: number | null;
  author?: string | null;
  author_name?: string | null;
  device?: string | null;
  skew_ms?: number | null;
  received_at?: string | null;
  receipt?: string | null;
}

export interface EntryOptions {
  record_id?: string;
  supersedes?: string[];
  local_date?: string;
}

/** Wraps a body as a new entry, stamped with both clocks of this moment. */
export function makeEntry<K extends KindName>(kind: K, body: BodyInputs[K] | null, options: EntryOptions = {}): Entry {
  const now = new Date();
  return {
    id: uuid7(),
    record_id: options.record_id ?? uuid7(),
    supersedes: options.supersedes ?? [],
    kind,
    kind_version: KINDS[kind].version,
    body,
    recorded_at: now.toISOString(),
    utc_offset_min: 0 - now.getTimezoneOffset(),
    local_date: options.local_date ?? civilDate(now),
    clock: { wall_ms: now.getTime(), monotonic_ms: Math.round(performance.now() * 1000) / 1000 },
  };
}

/** The day by the phone's own calendar, `YYYY-MM-DD`. */
export function civilDate(moment: Date): string {
  const two = (n: number) => String(n).padStart(2, "0");
  return `${moment.getFullYear()}-${two(moment.getMonth() + 1)}-${two(moment.getDate())}`;
}
