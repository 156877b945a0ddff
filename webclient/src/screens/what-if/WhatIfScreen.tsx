import { useState } from "preact/hooks";

import { askWhatIf, type Answer } from "../../board/whatIf.ts";
import { Button } from "../../parts/BigButton.tsx";
import { Screen } from "../../parts/Screen.tsx";
import { Stepper } from "../../parts/Stepper.tsx";
import { TextBox } from "../../parts/TextBox.tsx";
import type { Outing } from "../../entries/bodies.ts";
import { civilDate } from "../../entries/entry.ts";
import { useRecords, type SavedRecord } from "../../store/book.ts";
import { logbookId } from "../../store/place.ts";
import { showDay } from "../../words/dates.ts";
import { t } from "../../words/index.ts";
import { askedTitle } from "../../words/told.ts";
import "../../style/board.css";
import { Missing } from "../board/Missing.tsx";
import { useStanding } from "../board/useStandingList.ts";
import { Compared } from "./Compared.tsx";
import { Pick } from "./Pick.tsx";

/** Suppose more clear attempts, one outing less or another day, and see which findings would differ. */
export function WhatIfScreen({ params }: { params: { horseId: string; levelId: string } }) {
  const standing = useStanding(params.horseId, params.levelId);
  const outings = useRecords("outing", { horse_id: params.horseId }) ?? [];
  const fields = useRecords("field") ?? [];
  const [requirement, setRequirement] = useState("");
  const [clear, setClear] = useState(4);
  const [spread, setSpread] = useState(2);
  const [without, setWithout] = useState("");
  const [asOf, setAsOf] = useState("");
  const [trouble, setTrouble] = useState<string | null>(null);
  const [asking, setAsking] = useState(false);
  const [answer, setAnswer] = useState<Answer | null>(null);
  const back = `/board/${params.horseId}/${params.levelId}`;
  if (standing === null) return <Missing back={back} horseId={params.horseId} />;
  const ask = async (event: Event) => {
    event.preventDefault();
    const wrong = asOf > civilDate(new Date()) ? "whatif.future" : requirement || without || asOf ? null : "whatif.empty";
    setTrouble(wrong && t(wrong));
    setAnswer(null);
    if (wrong) return;
    setAsking(true);
    setAnswer(await askWhatIf(logbookId.value!, params.horseId, params.levelId, {
      as_of: asOf || null,
      without_outings: without ? [without] : [],
      more: requirement ? [{ requirement_id: requirement, clear, outings: Math.min(spread, clear) }] : [],
    }));
    setAsking(false);
  };
  const questions = (standing?.findings ?? []).filter((finding) => finding.phase === "cross_country");
  return (
    <Screen title={t("whatif.title")} back={back}>
      <p class="quiet">{t("whatif.about")}</p>
      <form class="form card" onSubmit={ask}>
        <Pick label={t("whatif.more")} value={requirement} onPick={setRequirement} choices={questions.map((each) => [each.requirement_id, askedTitle(each)])} />
        {requirement && <Stepper label={t("whatif.clear")} value={clear} onChange={setClear} step={1} least={1} most={50} from={4} show={String} />}
        {requirement && <Stepper label={t("whatif.outings")} value={spread} onChange={setSpread} step={1} least={1} most={20} from={2} show={String} />}
        <Pick label={t("whatif.without")} value={without} onPick={setWithout} choices={newestFirst(outings).map((each) => [each.record_id, outingWords(each.body, fields)])} />
        <TextBox label={t("whatif.as_of")} value={asOf} onInput={setAsOf} type="date" trouble={trouble} />
        <Button tone="main" type="submit" disabled={asking}>{asking ? t("whatif.asking") : t("whatif.ask")}</Button>
      </form>
      <Compared answer={answer} />
    </Screen>
  );
}

const newestFirst = (outings: SavedRecord<"outing">[]) => [...outings].sort((a, b) => b.body.date.localeCompare(a.body.date));

/** “19 November 2026, Cross-country school, Low Meadow”. */
function outingWords({ date, activity, field_id }: Outing, fields: SavedRecord<"field">[]): string {
  const field = fields.find((each) => each.record_id === field_id)?.body.name;
  return [showDay(date), t(`activity.${activity}`), field].filter(Boolean).join(", ");
}
