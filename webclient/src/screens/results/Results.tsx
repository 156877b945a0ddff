import "./results.css";

import { useState } from "preact/hooks";
import { Link } from "wouter-preact";

import type { EventResult, FlatworkTest, JumpingRound } from "../../entries/bodies.ts";
import { Row, Rows, Section } from "../../parts/Card.tsx";
import { Choices } from "../../parts/Choices.tsx";
import { Screen } from "../../parts/Screen.tsx";
import { type SavedRecord, useRecords, useRole } from "../../store/book.ts";
import { showHeight } from "../../units/index.ts";
import { showDay } from "../../words/dates.ts";
import { inside, t } from "../../words/index.ts";
import { RESULT_KINDS, type ResultKind, total } from "./drafts.ts";

const ALL = "all";

/** Flatwork tests, jumping rounds and events, the newest first. */
export function Results() {
  const horses = useRecords("horse");
  const role = useRole();
  const [horse_id, setHorse] = useState<string>(ALL);
  return (
    <Screen title={t("result.title")} back="/board">
      {role !== "reader" && (
        <Section title={t("result.enter")}>
          <div class="buttons">
            {RESULT_KINDS.map((kind) => <Link class="big-button" href={`/results/new/${kind}${horse_id === ALL ? "" : `?horse=${horse_id}`}`} key={kind}>{t(`result.new_${kind}`)}</Link>)}
          </div>
        </Section>
      )}
      {horses && horses.length > 1 && (
        <Choices
          label={t("result.horse")} value={horse_id} onChoose={(id) => setHorse(id ?? ALL)}
          choices={[{ value: ALL, words: t("result.all_horses") }, ...horses.map((one) => ({ value: one.record_id, words: one.body.name }))]}
        />
      )}
      {RESULT_KINDS.map((kind) => <OfKind kind={kind} horse_id={horse_id} key={kind} />)}
    </Screen>
  );
}

function OfKind({ kind, horse_id }: { kind: ResultKind; horse_id: string }) {
  const records = useRecords(kind);
  if (!records) return null;
  const shown = records.filter((one) => horse_id === ALL || one.body.horse_id === horse_id).reverse();
  return (
    <Section title={t(`result.list_${kind}`)}>
      <Rows empty={t("result.empty")}>{shown.map((one) => <ResultRow kind={kind} record={one} key={one.record_id} />)}</Rows>
    </Section>
  );
}

function ResultRow({ kind, record: { record_id, body } }: { kind: ResultKind; record: SavedRecord<ResultKind> }) {
  return <Row href={`/results/${kind}/${record_id}`} title={WORDS[kind](body as never)} detail={showDay(body.date)} />;
}

const WORDS: { [kind in ResultKind]: (body: never) => string } = {
  flatwork_test: flatworkWords,
  jumping_round: roundWords,
  event_result: eventWords,
};

export function flatworkWords({ percent, marks, test }: FlatworkTest): string {
  return percent === null ? t("result.row_flatwork_marks", { n: marks.length, test }) : t("result.row_flatwork", { percent: Math.round(percent * 100) / 100, test });
}

export function roundWords({ height_cm, efforts, knockdowns, refusals }: JumpingRound): string {
  return t("result.row_round", { height: showHeight(height_cm), efforts, knockdowns, refusals });
}

export function eventWords(body: EventResult): string {
  const sum = total(body);
  if (body.status === "completed" && sum?.whole) return t("result.row_event_total", { event: body.event, total: sum.total });
  return t("result.row_event", { event: body.event, status: inside(t(`event_status.${body.status}`)) });
}
