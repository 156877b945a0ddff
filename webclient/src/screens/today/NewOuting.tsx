import { useState } from "preact/hooks";
import { Link, useLocation } from "wouter-preact";

import { ACTIVITIES, type Activity } from "../../entries/bodies.ts";
import { BigButton, Button } from "../../parts/BigButton.tsx";
import { Choices } from "../../parts/Choices.tsx";
import { type SavedRecord, useRecords, useRole } from "../../store/book.ts";
import { t } from "../../words/index.ts";
import { Company } from "./Company.tsx";
import { MoreOfOuting } from "./MoreOfOuting.tsx";
import { begin, type ChangeDraft, type OutingDraft, useNewOuting } from "./useNewOuting.ts";

interface Props {
  horses: SavedRecord<"horse">[];
  last: SavedRecord<"outing"> | undefined;
  /** Another outing is under way, or somebody came to read: this stays folded until asked for. */
  folded: boolean;
}

/** Horse, field, what is to be done, and off you go: two taps when it is like the last time. */
export function NewOuting({ horses, last, folded }: Props) {
  const [unfolded, unfold] = useState(!folded);
  const [draft, change] = useNewOuting(horses, last);
  const [, navigate] = useLocation();
  if (!unfolded) return <div class="buttons"><Button onClick={() => unfold(true)}>{t("today.new")}</Button></div>;
  const start = async () => {
    const id = await begin(draft);
    if (id) navigate(`/outing/${id}`);
  };
  return (
    <section class="card form" aria-label={t("today.new")}>
      <Choices label={t("today.horse")} value={draft.horse_id} choices={horses.map((horse) => ({ value: horse.record_id, words: horse.body.name }))} onChoose={(horse_id) => horse_id && change({ horse_id })} />
      <FieldChoice draft={draft} change={change} />
      <Choices label={t("today.activity")} value={draft.activity} choices={ACTIVITIES.map((value: Activity) => ({ value, words: t(`activity.${value}`) }))} onChoose={(activity) => activity && change({ activity })} />
      {draft.activity === "cross_country_school" && !draft.from_memory && <Company draft={draft} change={change} />}
      <MoreOfOuting draft={draft} change={change} />
      <div class="start-bar">
        <BigButton tone="main" onClick={() => void start()}>{draft.from_memory ? t("today.write_down") : t("today.start")}</BigButton>
      </div>
      <AddLinks />
    </section>
  );
}

function FieldChoice({ draft, change }: { draft: OutingDraft; change: ChangeDraft }) {
  const fields = useRecords("field");
  if (!fields) return null;
  const known = fields.some((field) => field.record_id === draft.field_id);
  const choices = fields.map((field) => ({ value: field.record_id, words: field.body.name }));
  return (
    <Choices
      label={t("today.field")} value={known ? draft.field_id! : "none"} choices={[...choices, { value: "none", words: t("today.no_field") }]}
      onChoose={(id) => change({ field_id: id === "none" ? null : id })}
    />
  );
}

function AddLinks() {
  return (
    <p class="quiet">
      {useRole() === "rider" && <><Link href="/horse/new">{t("today.add_horse")}</Link>{" · "}</>}
      <Link href="/field/new">{t("today.add_field")}</Link>
    </p>
  );
}
