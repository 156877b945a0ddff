// What the next outing will be: like the last one until something is changed.

import { useState } from "preact/hooks";

import type { Activity, Going } from "../../entries/bodies.ts";
import { civilDate } from "../../entries/entry.ts";
import { save, type SavedRecord } from "../../store/book.ts";

export interface OutingDraft {
  horse_id: string;
  field_id: string | null;
  activity: Activity;
  date: string;
  going: Going | null;
  rider_confidence: number | null;
  from_memory: boolean;
  /** Asked before cross-country; never carried over from another day. */
  accompanied: boolean | null;
}

export type ChangeDraft = (part: Partial<OutingDraft>) => void;

export function useNewOuting(horses: SavedRecord<"horse">[], last: SavedRecord<"outing"> | undefined): [OutingDraft, ChangeDraft] {
  const [changed, setChanged] = useState<Partial<OutingDraft>>({});
  const known = horses.some((horse) => horse.record_id === last?.body.horse_id);
  const draft: OutingDraft = {
    horse_id: known ? last!.body.horse_id : horses[0]!.record_id,
    field_id: last?.body.field_id ?? null,
    activity: last?.body.activity ?? "cross_country_school",
    date: civilDate(new Date()),
    going: null,
    rider_confidence: null,
    from_memory: false,
    accompanied: null,
    ...changed,
  };
  return [draft, (part) => setChanged((now) => ({ ...now, ...withMemory(part) }))];
}

// an outing of another day is being written down from memory, unless the person says otherwise
function withMemory(part: Partial<OutingDraft>): Partial<OutingDraft> {
  return part.date === undefined ? part : { ...part, from_memory: part.date !== civilDate(new Date()) };
}

export async function begin(draft: OutingDraft): Promise<string | null> {
  const asked = draft.activity === "cross_country_school" && !draft.from_memory;
  const saved = await save("outing", { ...draft, accompanied: asked ? draft.accompanied : null }).catch(() => null);
  return saved?.record_id ?? null;
}
