import { civilDate } from "../entries/entry.ts";
import { here } from "../store/place.ts";
import { startingWith } from "../store/table.ts";
import type { TableKind } from "./columns.ts";
import { type Manner, tableText } from "./csv.ts";
import { handOver } from "./handOver.ts";
import { tableOf } from "./tables.ts";

/** Hands over one table of the logbook on screen, from what is on this phone. */
export async function exportTable(kind: TableKind, manner: Manner): Promise<boolean> {
  const { db, logbook_id } = here();
  const records = (await db.records.find(null, startingWith(logbook_id))).filter((row) => row.body !== null);
  return handOver(`fieldtally-${kind}-${civilDate(new Date())}.csv`, [tableText(tableOf(kind, records), manner)], "text/csv");
}
