import { logbooks } from "../account/session.ts";
import { civilDate } from "../entries/entry.ts";
import type { EntryRow } from "../store/db.ts";
import { openDb } from "../store/place.ts";
import { UNSENT } from "../store/unsent.ts";
import { piecesOfCopy } from "./copyOfAll.ts";
import { handOver } from "./handOver.ts";

/** Hands over a file with everything on this phone, or only what was not sent. */
export async function exportAll(unsentOnly = false): Promise<boolean> {
  const pieces = await piecesOfCopy(openDb.value!, logbooks.value, unsentOnly ? UNSENT : undefined);
  return handOver(`fieldtally-${civilDate(new Date())}${unsentOnly ? "-unsent" : ""}.json`, pieces);
}

export async function exportOne(entry: EntryRow): Promise<boolean> {
  return handOver(`fieldtally-entry-${entry.id}.json`, [JSON.stringify(entry, null, 2), "\n"]);
}
