// Records of this phone as a table: one row each, oldest day first.

import type { Mark, TimedCanter } from "../entries/bodies.ts";
import type { Plain } from "../entries/merge.ts";
import { speed } from "../pace/speed.ts";
import { writeMarks } from "../screens/results/markSheet.ts";
import type { RecordRow } from "../store/db.ts";
import { columnsOf, type TableKind } from "./columns.ts";

const OWN = ["author", "record_id"];
const LINKS = ["outing_id", "fence_id", "track_id"];

/** Header and rows of `kind`. `records` are all living records of the logbook. */
export function tableOf(kind: TableKind, records: readonly RecordRow[]): unknown[][] {
  const byId = new Map(records.map((row) => [row.record_id, row]));
  const columns = [...columnsOf(kind), ...OWN];
  const rows = records.filter((row) => row.shelf === kind).map((row) => factsOf(row, byId));
  return [columns, ...rows.sort((a, b) => (a.date + a.at < b.date + b.at ? -1 : 1)).map((facts) => columns.map((column) => facts[column]))];
}

type Facts = Plain & { date: string; at: string };

function factsOf(row: RecordRow, byId: Map<string, RecordRow>): Facts {
  const body = row.body!;
  const linked = (kind: string) => [body, ...LINKS.map((link) => byId.get(String(body[link]))?.body)].map((from) => byId.get(String(from?.[`${kind}_id`]))?.body).find(Boolean);
  const [outing, fence] = [linked("outing"), linked("fence")];
  return {
    ...body, ...(body.presentation as Plain | undefined), ...derived(row),
    at: row.recorded_at, date: String(body.date ?? outing?.date ?? row.local_date), author: row.author_name, record_id: row.record_id,
    horse: linked("horse")?.name, field: linked("field")?.name, track: linked("track")?.name, activity: outing?.activity,
    fence: fence?.label, profile: fence?.profile,
  };
}

function derived({ shelf, body }: RecordRow): Plain {
  if (shelf === "timed_canter") return { speed_mpm: Math.round(speed(body as unknown as TimedCanter).speed_mpm * 10) / 10 };
  return shelf === "flatwork_test" ? { marks: writeMarks(body!.marks as Mark[]) } : {};
}
