// Entries from elsewhere (a file, this phone's own logbook) taken into a logbook as they are. The same id is the
// same entry, so that taking in twice, or again after a kill, ends the same.

import { KINDS, type KindName, type Role } from "../entries/bodies.ts";
import type { Entry, Numbering } from "../entries/entry.ts";
import { isKind } from "../entries/upcast.ts";
import { afterSave } from "../store/afterSave.ts";
import type { EntryRow } from "../store/db.ts";
import type { Place } from "../store/place.ts";
import { refold } from "../store/refold.ts";
import { NotSaved, notSaved, troubleOf } from "../store/trouble.ts";

export type Incoming = Entry & Partial<Numbering>;
type Tell = (done: number, total: number) => void;

const PER_STEP = 500;

/** Takes in what is not here yet, some hundreds a strict transaction; how many that were. Rejects with NotSaved:
 * the steps before are kept, and doing it again goes on from there. */
export async function takeIn(place: Place, entries: Incoming[], tell: Tell = () => undefined): Promise<number> {
  let added = 0;
  for (let from = 0; from < entries.length; from += PER_STEP) {
    added += await oneStep(place, entries.slice(from, from + PER_STEP)).catch(refuse);
    tell(Math.min(entries.length, from + PER_STEP), entries.length);
  }
  notSaved.value = null;
  if (added) afterSave(place);
  return added;
}

export function refuse(error: unknown): never {
  notSaved.value = troubleOf(error); // said on every screen until something is saved again
  throw new NotSaved(notSaved.value, error);
}

function oneStep({ db, logbook_id, me }: Place, entries: Incoming[]): Promise<number> {
  return db.transaction(["entries", "records"], async (inside) => {
    const here = await inside.entries.bulkGet(entries.map(({ id }) => [logbook_id, id] as [string, string]));
    const fresh = new Map(entries.filter((_, at) => !here[at]).map((entry) => [entry.id, entry]));
    const rows = [...fresh.values()].map((entry) => rowOf(entry, logbook_id, me));
    await inside.entries.bulkPut(rows);
    await refold(inside, logbook_id, rows.map((row) => row.record_id));
    return rows.length;
  });
}

// a receipt proves who wrote it; without one it is by whoever sends it, as docs/protocol.md says
function rowOf(entry: Incoming, logbook_id: string, me: Place["me"]): EntryRow {
  const { refusal: _, failures: __, retry_at_ms: ___, ...plain } = entry as EntryRow;
  const by = entry.receipt ? {} : { author: me.id, author_name: me.display_name };
  return { ...plain, ...by, logbook_id, number: null, state: "here" };
}

/** Whether the server would take it from this role. What this release cannot read is for the server to judge. */
export function mayBring({ kind, receipt }: Incoming, role: Role): boolean {
  return role !== "reader" && (Boolean(receipt) || !isKind(kind) || KINDS[kind as KindName].writers.includes(role));
}
