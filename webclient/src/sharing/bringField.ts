// What a shared field would change in a logbook, before anything is changed. The ids of its records are made from
// those they came from, so that bringing it twice, from two phones or a week later brings it once.

import type { Plain } from "../entries/merge.ts";
import { same } from "../entries/same.ts";
import type { Incoming } from "../imports/takeIn.ts";
import { uuid5 } from "../imports/uuid5.ts";
import type { PhoneDb, RecordRow } from "../store/db.ts";
import type { Part, SharedField } from "./fieldFile.ts";

export interface FieldPlan {
  /** It is this logbook's own field: nothing to bring. */
  own: boolean;
  entries: Incoming[];
  counts: { fence: number; track: number };
  fresh: number;
  /** Brought before, changed since by whoever shares it, and left alone here. */
  renewed: number;
  already: number;
  /** Changed or taken back here since it was brought: what is here stays. */
  kept: string[];
}

export async function planField(db: PhoneDb, logbook_id: string, { parts, made_at }: SharedField): Promise<FieldPlan> {
  const count = (wanted: string) => parts.filter(({ kind }) => kind === wanted).length;
  const plan: FieldPlan = { own: false, entries: [], counts: { fence: count("fence"), track: count("track") }, fresh: 0, renewed: 0, already: 0, kept: [] };
  const head = parts.find(({ kind }) => kind === "field")!;
  if ((await db.records.get([logbook_id, head.record_id]))?.body) return { ...plan, own: true };
  const field_id = await uuid5(logbook_id, head.record_id);
  for (const part of parts) {
    const record_id = await uuid5(logbook_id, part.record_id);
    const body: Plain = part.kind === "field" ? part.body : { ...part.body, field_id };
    const row = await db.records.get([logbook_id, record_id]);
    if (row && same(row.body, body)) plan.already += 1;
    else if (row && !asBrought(row)) plan.kept.push(String(body.name ?? body.label));
    else {
      plan[row ? "renewed" : "fresh"] += 1;
      plan.entries.push(await entryOf({ ...part, record_id, body }, row?.heads ?? [], made_at));
    }
  }
  return plan;
}

// what a person writes has an id made from the clock (version 7), what is brought one made from its content (5)
const asBrought = ({ heads }: RecordRow): boolean => heads.every((id) => id[14] === "5");

async function entryOf({ kind, kind_version, record_id, body }: Part, heads: string[], made_at: string): Promise<Incoming> {
  const supersedes = [...heads].sort();
  return {
    id: await uuid5(record_id, JSON.stringify([made_at, supersedes, body])), record_id, supersedes, kind, kind_version, body,
    recorded_at: made_at, utc_offset_min: 0, local_date: made_at.slice(0, 10), clock: null,
  };
}
