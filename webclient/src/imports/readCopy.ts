// A copy as this phone or the server writes it: recognised, read, and every line that is no entry left out.

import type { Plain } from "../entries/merge.ts";
import { current, readable } from "../entries/upcast.ts";
import type { Incoming } from "./takeIn.ts";
import type { CopiedMedia } from "./takeMedia.ts";

/** One logbook of a copy. `broken`: lines that are no entries. */
export interface CopiedBook {
  id: string;
  title: string;
  /** Null: it was never sent to any server. */
  log_id: string | null;
  entries: Incoming[];
  media: CopiedMedia[];
  broken: number;
}

/** not_ours: something else. cut: one of ours, but not all of it. newer: written by a newer Fieldtally. */
export type CopyTrouble = "not_ours" | "cut" | "newer";

const FORMAT = 1;
const ID = /^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/;
const DAY = /^\d{4}-\d\d-\d\d$/;

export function readCopy(text: string): CopiedBook[] | CopyTrouble {
  let read: Plain;
  try {
    read = JSON.parse(text) as Plain;
  } catch {
    return /^\s*\{\s*"fieldtally_/.test(text) ? "cut" : "not_ours";
  }
  const books = read?.fieldtally_phone_export ? read.logbooks : [isEntry(read as unknown as Incoming) ? bookOfOne(read) : read];
  if (!Array.isArray(books) || !books.every(isBook)) return "not_ours";
  return [read, ...books].some(isNewer) ? "newer" : books.map(bookOf);
}

/** A single entry that was exported by itself; what it says of its logbook is all that is known of that. */
function bookOfOne(entry: Plain): Plain {
  return { fieldtally_export: FORMAT, logbook: { id: entry.logbook_id, log_id: entry.logbook_id }, entries: [entry] };
}

function isNewer({ fieldtally_phone_export = FORMAT, fieldtally_export = FORMAT }: Plain): boolean {
  return fieldtally_phone_export !== FORMAT || fieldtally_export !== FORMAT;
}

function isBook(book: Plain | null): boolean {
  return book?.fieldtally_export !== undefined && Array.isArray(book.entries) && ID.test(String((book.logbook as Plain | null)?.id));
}

function bookOf(book: Plain): CopiedBook {
  const { id, title, log_id } = book.logbook as Plain;
  const lines = [...(book.entries as Incoming[]), ...((book.held as Incoming[] | undefined) ?? [])];
  const entries = [...new Map(lines.filter(isEntry).map((entry) => [entry.id, entry])).values()];
  const media = ((book.media as CopiedMedia[] | undefined) ?? []).filter((each) => typeof each?.sha256 === "string" && typeof each.base64 === "string");
  return { media, id: id as string, title: String(title ?? ""), log_id: (log_id as string) || null, entries, broken: lines.filter((line) => !isEntry(line)).length };
}

// what this release cannot read is kept untouched; what it claims to read must be readable
function isEntry(entry: Incoming | null): entry is Incoming {
  if (typeof entry !== "object" || entry === null) return false;
  const { id, record_id, supersedes, kind, kind_version, body, recorded_at, local_date } = entry;
  const ids = Array.isArray(supersedes) && [id, record_id, ...supersedes].every((each) => ID.test(String(each)));
  const times = DAY.test(String(local_date)) && !Number.isNaN(Date.parse(recorded_at));
  return ids && times && typeof kind === "string" && Number.isInteger(kind_version) && typeof body === "object" && opens(kind, kind_version, body as Plain | null);
}

function opens(kind: string, version: number, body: Plain | null): boolean {
  try {
    if (body && readable(kind, version)) current(kind, version, body);
    return true;
  } catch {
    return false;
  }
}
