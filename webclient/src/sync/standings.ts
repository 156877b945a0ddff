// The standings and rulebooks the server worked out, kept for the field with the day they were made for.

import type { Plain } from "../entries/merge.ts";
import { getMeta, setMeta, type StandingRow } from "../store/db.ts";
import { startingWith } from "../store/table.ts";
import type { SyncContext } from "./context.ts";
import { readCursor } from "./cursor.ts";
import { type Packed, unpack } from "./packed.ts";
import { dataOf } from "./stop.ts";

interface Standings extends Packed {
  log_id: string;
  as_of: string;
  logbook_number: number;
  standings: (Plain & Omit<StandingRow, "logbook_id" | "standing">)[];
}

/** What the standings on this phone are made from. */
export interface StandingsNote {
  log_id: string;
  as_of: string;
  logbook_number: number;
  asked_on: string;
}

export const standingsKey = (logbook_id: string) => `standings:${logbook_id}`;

/** Fetches the standings when the logbook went on, or a new day began, since they were last fetched. */
export async function pullStandings(context: SyncContext): Promise<void> {
  const { db, logbook_id, wire, now } = context;
  const asked_on = new Date(now()).toISOString().slice(0, 10);
  const last = await getMeta<StandingsNote>(db, standingsKey(logbook_id));
  const cursor = await readCursor(db, logbook_id);
  const fresh = last && last.log_id === cursor.log_id && last.logbook_number >= cursor.number && last.asked_on === asked_on;
  if (fresh) return;
  const told = dataOf(await wire.get<Standings>(`/api/logbooks/${logbook_id}/standings?packed=1`));
  await storeStandings(context, told, asked_on);
}

async function storeStandings({ db, logbook_id }: SyncContext, told: Standings, asked_on: string): Promise<void> {
  const rows = told.standings.map((standing) => {
    const { horse_id, rulebook_id, level_id } = standing;
    const findings = unpack(standing.findings as unknown[], horse_id, told);
    return { logbook_id, horse_id, rulebook_id, level_id, standing: { ...standing, findings } as Plain };
  });
  const { log_id, as_of, logbook_number } = told;
  await db.transaction(["standings", "meta"], async (inside) => {
    await inside.standings.deleteRange(startingWith(logbook_id));
    await inside.standings.bulkPut(rows);
    await setMeta(inside, standingsKey(logbook_id), { log_id, as_of, logbook_number, asked_on } satisfies StandingsNote);
  });
}
