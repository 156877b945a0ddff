import type { EntryRow } from "../store/db.ts";
import { useLive } from "../store/live.ts";
import { here } from "../store/place.ts";
import { showMoment } from "../words/dates.ts";
import { t } from "../words/index.ts";
import { describe, linkedId } from "./describe.ts";

/** One entry in a line: what it is about, what it says, when it was recorded. */
export function Described({ entry }: { entry: EntryRow }) {
  const linked = linkedId(entry.kind, entry.body);
  const other = useLive(async () => (linked ? (await here().db.records.get([entry.logbook_id, linked])) ?? null : null), [linked]);
  const said = entry.body === null ? t("needs.taken_back") : describe(entry.kind, entry.body, other?.body ?? null);
  return <>{[kindWords(entry.kind), said, showMoment(entry.recorded_at)].filter(Boolean).join(" · ")}</>;
}

export function kindWords(kind: string): string {
  return t(`kind.${kind as "horse"}`);
}
