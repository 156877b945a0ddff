// What the server said of each entry, applied in one transaction: either all of a reply is known here or none.

import { uuid7 } from "../entries/uuid7.ts";
import type { EntryRow, PhoneDb, RecordRow, Refusal } from "../store/db.ts";
import { refold } from "../store/refold.ts";
import { dropSpare } from "../store/spare.ts";
import type { SyncContext } from "./context.ts";
import { readCursor, writeCursor } from "./cursor.ts";

export interface Answer {
  id: string;
  result: "accepted" | "already" | "held" | "refused";
  number?: number;
  code?: string;
  field?: string | null;
  message?: string;
  fix?: string | null;
}

/**
 * Takes the answers for `rows`, numbers of the run `log_id`. Entries without an answer stay as they are and are
 * sent again.
 */
export async function applyAnswers(context: SyncContext, rows: EntryRow[], answers: Answer[], log_id: string): Promise<void> {
  const byId = new Map(answers.map((answer) => [answer.id, answer]));
  const answered = rows.filter((row) => byId.has(row.id));
  await write(context, answered.map((row) => after(row, byId.get(row.id)!)), log_id);
  await noLongerSpare(context, answered);
  for (const row of answered) if (byId.get(row.id)!.code === "id_taken") await underNewId(context, row);
  for (const row of answered) countAnswer(context, byId.get(row.id)!);
}

/** The server will not have this one: kept with the reason until the person mends or discards it. */
export async function refuseAlone(context: SyncContext, row: EntryRow, refusal: Refusal): Promise<void> {
  await write(context, [{ ...row, state: "needs_you", refusal }]);
  await noLongerSpare(context, [row]);
  context.tally.refused += 1;
}

/** The server failed on this one by itself: the others go on, this one waits longer each time. */
export async function putOff(context: SyncContext, row: EntryRow, wait_ms: number): Promise<void> {
  await write(context, [{ ...row, failures: (row.failures ?? 0) + 1, retry_at_ms: context.now() + wait_ms }]);
}

async function write({ db, logbook_id }: SyncContext, changed: EntryRow[], log_id: string | null = null): Promise<void> {
  await db.transaction(["entries", "records", "meta"], async (inside) => {
    if (log_id !== null) await belongTo(inside, logbook_id, log_id);
    await inside.entries.bulkPut(changed);
    const records = await inside.records.bulkGet(changed.map((row) => [logbook_id, row.record_id] as [string, string]));
    const simple = changed.filter((row, place) => isWholeRecord(row, records[place]));
    const rowOf = new Map(records.map((record) => [record?.record_id, record]));
    await inside.records.bulkPut(simple.map((row) => ({ ...rowOf.get(row.record_id)!, number: row.number, state: row.state })));
    const others = changed.filter((row) => !simple.includes(row));
    if (others.length) await refold(inside, logbook_id, others.map((row) => row.record_id));
  });
}

// what stays behind is found at the next start, and goes then
async function noLongerSpare({ db, logbook_id }: SyncContext, rows: EntryRow[]): Promise<void> {
  await dropSpare(db, logbook_id, rows.map((row) => row.id)).catch(() => undefined);
}

// A first number ties the phone to its run of numbers at once: were the server restored before the first page
// is fetched, the phone must notice, or it would believe sent what the restored server never had.
async function belongTo(inside: PhoneDb, logbook_id: string, log_id: string): Promise<void> {
  const cursor = await readCursor(inside, logbook_id);
  if (cursor.log_id === null) await writeCursor(inside, logbook_id, { ...cursor, log_id });
}

// nearly always: the entry is the record's only head, so nothing has to be folded again
function isWholeRecord(row: EntryRow, record: RecordRow | undefined): boolean {
  return record?.heads.length === 1 && record.heads[0] === row.id;
}

function after(row: EntryRow, answer: Answer): EntryRow {
  const { refusal: _, failures: __, retry_at_ms: ___, ...plain } = row;
  if (answer.result === "held") return { ...plain, state: "held" };
  if (answer.result !== "refused") return { ...plain, state: "sent", number: answer.number! };
  return { ...plain, state: "needs_you", refusal: refusalOf(answer) };
}

export function refusalOf(said: Partial<Refusal>): Refusal {
  const { code = "refused", field = null, message = "", fix = null } = said;
  return { code, field, message, fix };
}

function countAnswer({ tally }: SyncContext, { result, code }: Answer): void {
  if (result === "held") tally.held += 1;
  else if (result === "refused") tally.refused += code === "id_taken" ? 0 : 1;
  else tally.sent += 1;
}

// another entry has this id, which only a broken clock or a copied phone can cause: ours gets a new one
async function underNewId({ db, logbook_id }: SyncContext, row: EntryRow): Promise<void> {
  await db.transaction(["entries", "records"], async (inside) => {
    await inside.entries.delete([logbook_id, row.id]);
    await inside.entries.add({ ...row, id: uuid7(), state: "here" });
    await refold(inside, logbook_id, [row.record_id]);
  });
}
