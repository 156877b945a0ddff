// A table somebody brings: which of ours it is, which of its columns mean what, and each of its rows read.

import { columnsOf, type TableKind } from "../copies/columns.ts";
import { columnNamed, kindOfTable } from "./columnNames.ts";
import { orderOfDays } from "./readDay.ts";
import { type Reading, readRow, type Row } from "./readRow.ts";

export interface Sheet {
  kind: TableKind;
  /** Place in the table by column of ours. */
  places: Map<string, number>;
  /** Headings that mean nothing here: their cells are left where they are. */
  unused: string[];
  /** Null: the days can be read both ways and the person has to say. */
  dayFirst: boolean | null;
}

/** What the headings of a table say; null where it is none of ours. */
export function sheetOf([headings = [], ...rows]: readonly string[][]): Sheet | null {
  const kind = kindOfTable(headings);
  if (!kind) return null;
  const wanted = [...columnsOf(kind), "record_id"];
  const places = new Map<string, number>();
  headings.forEach((heading, at) => {
    const column = columnNamed(heading, wanted);
    if (column && !places.has(column)) places.set(column, at);
  });
  const taken = new Set(places.values());
  const days = rows.map((row) => row[places.get("date")!] ?? "");
  return { kind, places, unused: headings.filter((heading, at) => heading.trim() && heading !== "author" && !taken.has(at)), dayFirst: orderOfDays(days) };
}

export function rowsOf({ kind, places }: Sheet, [, ...rows]: readonly string[][], reading: Omit<Reading, "kind">): Row[] {
  return rows.map((cells, at) => {
    const named = Object.fromEntries([...places].map(([column, place]) => [column, cells[place] ?? ""]));
    return readRow(at + 1, named, { ...reading, kind });
  });
}
