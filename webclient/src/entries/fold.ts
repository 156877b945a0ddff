// What the entries of one record add up to: its value, and the fork somebody has to settle. Arrival order
// plays no part. Twin of server/fieldtally/book/fold.py: both run fixtures/contract/fold.json.

import { headsOf, nearestCommon, rootsOf } from "./ancestry.ts";
import type { Entry, Numbering } from "./entry.ts";
import { merge, type Plain, sideOf } from "./merge.ts";
import { same } from "./same.ts";
import { current, readable } from "./upcast.ts";

/** Stands for the whole record in `Fork.fields`: one side took it back, another edited it. */
export const WHOLE = "*";

export type Foldable = Entry & Numbering;

/** One way to settle a fork: the body the record gets if this side is chosen; null takes it back. */
export interface Side {
  entry_id: string;
  number: number | null;
  author: string | null;
  body: Plain | null;
}

/** Edits that exclude each other: the fields they differ in, and the sides, highest number last. */
export interface Fork {
  fields: string[];
  sides: Side[];
}

/** One record as it stands. `body` null: taken back, or `unreadable` (of a kind or version unknown here). */
export interface Folded {
  record_id: string;
  kind: string;
  body: Plain | null;
  /** The day the record was first written down, and the moment. */
  local_date: string;
  recorded_at: string;
  number: number | null;
  author: string | null;
  author_name: string | null;
  /** What the next edit supersedes, in the order of their numbers. */
  heads: string[];
  fork: Fork | null;
  unreadable: boolean;
}

/** One record from all its entries, of which there is at least one, in any order. */
export function foldRecord(entries: Foldable[]): Folded {
  const sorted = [...entries].sort(byNumber);
  const ordered = sorted.filter((entry) => entry.kind === sorted[0]!.kind);
  const heads = headsOf(ordered);
  const unreadable = !heads.every(canRead);
  const value = unreadable ? { body: null, fork: null } : valueOf(ordered, heads);
  return { ...about(ordered, heads), ...value, unreadable };
}

/** Numbered entries by number, then those the server has not numbered yet by id. */
export function byNumber(one: Foldable, other: Foldable): number {
  const places = (one.number ?? Infinity) - (other.number ?? Infinity);
  if (places) return places < 0 ? -1 : 1; // Infinity less Infinity is NaN: then the ids decide
  return one.id < other.id ? -1 : one.id > other.id ? 1 : 0;
}

function about(ordered: Foldable[], heads: Foldable[]) {
  const newest = heads.at(-1)!;
  const root = rootsOf(ordered)[0]!;
  return {
    record_id: newest.record_id,
    kind: newest.kind,
    local_date: root.local_date,
    recorded_at: root.recorded_at,
    number: newest.number,
    author: newest.author ?? null,
    author_name: newest.author_name ?? null,
    heads: heads.map((head) => head.id),
  };
}

function valueOf(ordered: Foldable[], heads: Foldable[]): { body: Plain | null; fork: Fork | null } {
  if (heads.length === 1) return { body: bodyOf(heads[0]!), fork: null };
  const living = heads.filter((head) => head.body !== null);
  if (!living.length) return { body: null, fork: null };
  const merged = mergeHeads(ordered, living);
  const fork = living.length < heads.length ? againstTakingBack(heads, living, merged) : merged;
  const body = heads.at(-1)!.body === null ? null : merged.body;
  return { body, fork: fork.sides.length ? { fields: fork.fields, sides: fork.sides } : null };
}

function againstTakingBack(heads: Foldable[], living: Foldable[], merged: Fork & { body: Plain }): Fork {
  const gone = heads.filter((head) => head.body === null).at(-1)!;
  const edits = merged.sides.length ? merged.sides : [sideFrom(living.at(-1)!, merged.body)];
  const place = (side: Side) => heads.findIndex((head) => head.id === side.entry_id);
  const sides = [...edits, sideFrom(gone, null)].sort((one, other) => place(one) - place(other));
  return { fields: [WHOLE, ...merged.fields], sides };
}

function mergeHeads(ordered: Foldable[], heads: Foldable[]): Fork & { body: Plain } {
  const bases = nearestCommon(ordered, heads);
  const known = bases.every((base) => base.body !== null && canRead(base));
  const merged = merge(heads[0]!.kind, known ? bases.map((b) => bodyOf(b)!) : [], heads.map((h) => bodyOf(h)!));
  let sides: Side[] = [];
  for (const place of [...merged.own.keys()].sort((a, b) => a - b)) {
    const side = sideFrom(heads[place]!, sideOf(merged, place));
    sides = [...sides.filter((other) => !same(other.body, side.body)), side];
  }
  return { body: merged.body, fields: merged.disputed, sides };
}

function sideFrom(head: Foldable, body: Plain | null): Side {
  return { entry_id: head.id, number: head.number, author: head.author ?? null, body };
}

function canRead(entry: Entry): boolean {
  return entry.body === null || readable(entry.kind, entry.kind_version);
}

function bodyOf(entry: Entry): Plain | null {
  return entry.body === null ? null : current(entry.kind, entry.kind_version, entry.body as Plain);
}
