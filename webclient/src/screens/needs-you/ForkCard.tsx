import { describe } from "../../describe/describe.ts";
import { kindWords } from "../../describe/Described.tsx";
import { fieldWords, showValue } from "../../describe/values.ts";
import { type Side, WHOLE } from "../../entries/fold.ts";
import { same } from "../../entries/same.ts";
import { Button } from "../../parts/BigButton.tsx";
import { toast } from "../../parts/toast.ts";
import { settle } from "../../store/book.ts";
import type { EntryRow, RecordRow } from "../../store/db.ts";
import { useLive } from "../../store/live.ts";
import { here, me } from "../../store/place.ts";
import { showMoment } from "../../words/dates.ts";
import { t } from "../../words/index.ts";

/** One fork: what each side says in the fields they differ in, who said it and when, and a button for each. */
export function ForkCard({ row }: { row: RecordRow }) {
  const sides = row.fork!.sides;
  const entries = useLive(() => here().db.entries.bulkGet(sides.map((side) => [row.logbook_id, side.entry_id] as [string, string])), [sides]);
  const body = row.body ?? sides.find((side) => side.body)?.body;
  const keep = (side: Side) => settle(row.record_id, side.body).then(() => toast(t("needs.settled")), () => undefined);
  return (
    <article class="card">
      <h3>{[kindWords(row.kind), body && describe(row.kind, body, null)].filter(Boolean).join(": ")}</h3>
      {sides.map((side, place) => (
        <section class="side" key={side.entry_id}>
          <p class="quiet">{[saidBy(entries?.[place]), same(side.body, row.body) && t("needs.fork_counts_now")].filter(Boolean).join(" · ")}</p>
          <SideValues side={side} fields={row.fork!.fields} />
          <Button onClick={() => void keep(side)}>{t("needs.keep_this")}</Button>
        </section>
      ))}
    </article>
  );
}

function SideValues({ side, fields }: { side: Side; fields: string[] }) {
  const names = useNames(side.body);
  if (side.body === null) return <p><strong>{t("needs.taken_back")}</strong></p>;
  const differing = fields.filter((field) => field !== WHOLE);
  if (!differing.length) return <p><strong>{t("needs.kept_edited")}</strong></p>;
  return (
    <dl class="facts">
      {differing.map((field) => [<dt key={field}>{fieldWords(field)}</dt>, <dd key={`${field} says`}><strong>{showValue(field, side.body![field], (id) => names.get(id) ?? null)}</strong></dd>])}
    </dl>
  );
}

// the records that a side points to, by what they are called
function useNames(body: Side["body"]): Map<string, string> {
  const ids = Object.entries(body ?? {}).flatMap(([field, id]) => (field.endsWith("_id") && typeof id === "string" ? [id] : []));
  const rows = useLive(() => here().db.records.bulkGet(ids.map((id) => [here().logbook_id, id] as [string, string])), [ids]);
  return new Map((rows ?? []).flatMap((row) => (row?.body ? [[row.record_id, describe(row.kind, row.body, null)] as const] : [])));
}

function saidBy(entry: EntryRow | undefined): string {
  if (!entry) return "";
  const who = entry.author === me.value?.id ? t("needs.you") : (entry.author_name ?? t("needs.somebody"));
  return t("needs.said_by", { who, when: showMoment(entry.recorded_at) });
}
