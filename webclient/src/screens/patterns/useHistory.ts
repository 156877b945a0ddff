// One horse's outings, attempts and fences of the last year, read by index: a logbook may hold many horses and
// many years, and only these are needed.

import type { Attempt, Fence, Outing } from "../../entries/bodies.ts";
import type { Made } from "../../recording/made.ts";
import type { History } from "../../patterns/meetings.ts";
import type { RecordRow } from "../../store/db.ts";
import { useLive } from "../../store/live.ts";
import { here, logbookId, type Place } from "../../store/place.ts";
import { findRecord, findRecords } from "../../store/read.ts";

export interface HorseHistory extends History {
  fences: Map<string, Fence>;
}

/** Undefined while loading. `from`: the first civil day of interest. */
export function useHistory(horse_id: string, from: string): HorseHistory | undefined {
  const id = logbookId.value;
  const found = useLive(() => readHistory(here(), horse_id, from), [id, horse_id, from]);
  return found && { ...found, fences: new Map(found.fences) };
}

async function readHistory(place: Place, horse_id: string, from: string) {
  const outings = (await findRecords(place, "outing", { horse_id })).filter(({ day }) => day >= from);
  const attempts = (await Promise.all(outings.map(({ record_id }) => findRecords(place, "attempt", { outing_id: record_id })))).flat();
  const ids = [...new Set(attempts.map(({ fence_id }) => fence_id!))];
  const fences = await Promise.all(ids.map(async (fence_id) => [fence_id, (await findRecord(place, fence_id))?.body as Fence | null | undefined] as const));
  return {
    outings: outings.map(made<Outing>), attempts: attempts.map(made<Attempt>),
    fences: fences.filter((pair): pair is [string, Fence] => pair[1] != null),
  };
}

function made<Body>({ record_id, body, recorded_at }: RecordRow): Made<Body> {
  return { record_id, body: body as unknown as Body, recorded_at };
}
