// A table read against the logbook on screen: what it would make, what is here already, what has to be mended.

import { useRef } from "preact/hooks";

import { showValue } from "../../describe/values.ts";
import { civilDate } from "../../entries/entry.ts";
import type { Plain } from "../../entries/merge.ts";
import { type Asked, bring, type Brought } from "../../imports/bring.ts";
import { plainName } from "../../imports/columnNames.ts";
import type { Row } from "../../imports/readRow.ts";
import { rowsOf, type Sheet, sheetOf } from "../../imports/sheet.ts";
import type { Rulebook } from "../../pace/levels.ts";
import { useLive } from "../../store/live.ts";
import { here, logbookId, type Place } from "../../store/place.ts";
import { findRecords } from "../../store/read.ts";
import { t } from "../../words/index.ts";

export type RowState = "new" | "already" | "bad" | "waiting";

export interface TableView {
  /** What it was read from: everything that is done about it is done to this. */
  table: string[][];
  sheet: Sheet;
  rows: Row[];
  bad: Row[];
  fresh: number;
  already: number;
  /** New rows of a day on which that horse has such a record that did not come from this table. */
  alike: number;
  brought: Brought;
  stateOf: (row: Row) => RowState;
}

export function useTable(table: string[][], dayFirst: boolean | null, asked: Asked): TableView | undefined {
  const last = useRef<TableView | undefined>(undefined);
  const view = useLive(() => look(here(), table, dayFirst, asked), [logbookId.value, table, dayFirst, asked]);
  if (view) last.current = view;
  return last.current; // what stood there stays until the new reading is done: nobody loses the place they are at
}

async function look(place: Place, table: string[][], dayFirst: boolean | null, asked: Asked): Promise<TableView> {
  const sheet = sheetOf(table)!;
  const reading = { today: civilDate(new Date()), dayFirst: sheet.dayFirst ?? dayFirst, levels: await levelsHere(place), shown };
  const rows = rowsOf(sheet, table, reading);
  const known = (await Promise.all(["horse", "field", "fence"].map((kind) => findRecords(place, kind, {})))).flat();
  const ours = await idsHere(place, rows.map((row) => row.cells.record_id ?? ""), "records");
  const brought = await bring(sheet.kind, rows.filter((row) => !ours.has(row.cells.record_id ?? "")), place.logbook_id, known, asked, t("import.mark"));
  const stored = await idsHere(place, [...brought.idOf.values()], "entries");
  for (const row of rows) if (ours.has(row.cells.record_id ?? "")) brought.idOf.set(row.at, row.cells.record_id!);
  const stateOf = (row: Row): RowState => {
    const id = brought.idOf.get(row.at);
    if (id) return stored.has(id) || ours.has(id) ? "already" : "new";
    return row.troubles.length ? "bad" : "waiting";
  };
  const alike = await countAlike(place, sheet.kind === "attempt" ? "outing" : sheet.kind, brought);
  const count = (state: RowState) => rows.filter((row) => stateOf(row) === state).length;
  return { table, sheet, rows, bad: rows.filter((row) => stateOf(row) === "bad"), fresh: count("new"), already: count("already"), alike, brought, stateOf };
}

// what was recorded here by hand may be in the table as well: nobody but the person can tell
async function countAlike(place: Place, kind: string, { entries }: Brought): Promise<number> {
  const made = entries.filter((entry) => entry.kind === kind);
  const ids = new Set(made.map(({ record_id }) => record_id));
  const dayOf = (body: unknown) => `${(body as Plain).horse_id} ${(body as Plain).date}`;
  const days = new Set((await findRecords(place, kind, {})).filter((row) => !ids.has(row.record_id)).map((row) => dayOf(row.body)));
  return made.filter(({ body }) => days.has(dayOf(body))).length;
}

async function idsHere({ db, logbook_id }: Place, ids: string[], table: "entries" | "records"): Promise<Set<string>> {
  const asked = ids.filter((id) => id !== "");
  const found = await (db[table].bulkGet as (keys: [string, string][]) => Promise<unknown[]>)(asked.map((id) => [logbook_id, id]));
  return new Set(asked.filter((_, at) => found[at]));
}

async function levelsHere({ db }: Place): Promise<Map<string, string>> {
  const books = (await db.rulebooks.toArray()).map((row) => row.rulebook as unknown as Rulebook);
  return new Map(books.flatMap(({ levels }) => levels.flatMap(({ id, name }) => [[plainName(id), id], [plainName(name), id]] as const)));
}

function shown(column: string, word: string): string {
  return showValue(column, word === "true" ? true : word === "false" ? false : word);
}
