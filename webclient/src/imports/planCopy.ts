// What a copy would change here, before anything is changed.

import type { Role } from "../entries/bodies.ts";
import { same } from "../entries/same.ts";
import type { PhoneDb } from "../store/db.ts";
import type { CopiedBook } from "./readCopy.ts";
import { type Incoming, mayBring } from "./takeIn.ts";
import { uuid5 } from "./uuid5.ts";

/** A logbook of this phone that a copy may go into. */
export interface Own {
  id: string;
  title: string;
  role: Role;
}

export interface CopyPlan {
  book: CopiedBook;
  into: Own;
  /** Of a logbook that is not one of this phone's: nothing is taken in unless as new records. */
  foreign: boolean;
  counts: { horse: number; outing: number; attempt: number; others: number };
  from: string | null;
  to: string | null;
  /** What would be added. */
  fresh: Incoming[];
  already: number;
  /** The same id with other content: what is here stays. */
  differ: number;
  /** What this role may not write and nobody's receipt proves. */
  not_mine: number;
}

/** The plan for one logbook of a copy; `shown` is where records of another logbook would go. */
export async function planCopy(db: PhoneDb, book: CopiedBook, owned: Own[], shown: Own): Promise<CopyPlan> {
  const own = owned.find(({ id }) => id === book.id);
  const foreign = !own && book.log_id !== null && !(await anyHere(db, shown.id, book.entries));
  const into = own ?? shown;
  return planFor(db, book, into, foreign, foreign ? await asNew(book, into.id) : book.entries);
}

async function planFor(db: PhoneDb, book: CopiedBook, into: Own, foreign: boolean, entries: Incoming[]): Promise<CopyPlan> {
  const here = await db.entries.bulkGet(entries.map(({ id }) => [into.id, id] as [string, string]));
  const fresh = entries.filter((_, at) => !here[at]);
  const mine = fresh.filter((entry) => mayBring(entry, into.role));
  const differ = entries.filter((entry, at) => here[at] && !same([entry.record_id, entry.body], [here[at]!.record_id, here[at]!.body])).length;
  const days = entries.map(({ body, local_date }) => (body as { date?: string } | null)?.date ?? local_date).sort();
  return {
    book, into, foreign, counts: countRecords(entries), from: days[0] ?? null, to: days.at(-1) ?? null,
    fresh: mine, already: entries.length - fresh.length - differ, differ, not_mine: fresh.length - mine.length,
  };
}

function countRecords(entries: Incoming[]): CopyPlan["counts"] {
  const of = (kind?: string) => new Set(entries.filter((entry) => !kind || entry.kind === kind).map(({ record_id }) => record_id)).size;
  const [horse, outing, attempt] = [of("horse"), of("outing"), of("attempt")];
  return { horse, outing, attempt, others: of() - horse - outing - attempt };
}

async function anyHere(db: PhoneDb, logbook_id: string, entries: Incoming[]): Promise<boolean> {
  return (await db.entries.bulkGet(entries.map(({ id }) => [logbook_id, id] as [string, string]))).some(Boolean);
}

/** The same history under ids of its own, made from the old ones, so that copying twice copies once. */
export async function asNew({ entries }: CopiedBook, logbook_id: string): Promise<Incoming[]> {
  const ids = [...new Set(entries.flatMap(({ id, record_id }) => [id, record_id]))];
  const renamed = new Map(await Promise.all(ids.map(async (id) => [id, await uuid5(logbook_id, id)] as const)));
  return entries.map(({ receipt: _, number: __, author: ___, author_name: ____, device: _____, ...entry }) => {
    const text = JSON.stringify(entry).replace(/[0-9a-f]{8}(?:-[0-9a-f]{4}){3}-[0-9a-f]{12}/g, (id) => renamed.get(id) ?? id);
    return JSON.parse(text) as Incoming;
  });
}
