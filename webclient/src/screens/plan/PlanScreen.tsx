import { useState } from "preact/hooks";

import type { Plan, PlanStep, Standing } from "../../board/standing.ts";
import { Row, Rows, Section } from "../../parts/Card.tsx";
import { Choices } from "../../parts/Choices.tsx";
import { Notice } from "../../parts/Notice.tsx";
import { Screen } from "../../parts/Screen.tsx";
import { Told } from "../../parts/Told.tsx";
import { useRecords } from "../../store/book.ts";
import { t } from "../../words/index.ts";
import { askedTitle, toldAs, toldLeft, toldPlanStep, toldText } from "../../words/told.ts";
import "../../style/board.css";
import { AsOf } from "../board/AsOf.tsx";
import { Missing } from "../board/Missing.tsx";
import { useStanding } from "../board/useStandingList.ts";

/** The next outing at a chosen field, readable in the field: what to use, in which order, and when to stop. */
export function PlanScreen({ params }: { params: { horseId: string; levelId: string } }) {
  const standing = useStanding(params.horseId, params.levelId);
  const fields = useRecords("field");
  const [chosen, setChosen] = useState<string | null>(null);
  const back = `/board/${params.horseId}/${params.levelId}`;
  if (standing === null) return <Missing back={back} horseId={params.horseId} />;
  if (!standing || !fields) return <Screen title={t("board.plan")} back={back}>{null}</Screen>;
  const plans = (standing.plans ?? []).filter((plan) => plan.field_id !== null);
  const at = chosen ?? plans[0]?.field_id ?? null;
  const plan = plans.find((each) => each.field_id === at);
  return (
    <Screen title={t("board.plan_title", { level: standing.level_name })} back={back}>
      {plans.length > 0 && (
        <Choices
          label={t("today.field")} value={at} onChoose={(id) => id && setChosen(id)}
          choices={fields.map((field) => ({ value: field.record_id, words: field.body.name }))}
        />
      )}
      {plan ? <PlanOf plan={plan} standing={standing} /> : <p class="empty">{t(at ? "board.plan_no_fences" : "board.plan_none")}</p>}
      {at && !plan && <Rows>{[<Row href={`/field/${at}`} title={t("board.plan_fields")} key="fields" />]}</Rows>}
      <AsOf standing={standing} />
    </Screen>
  );
}

function PlanOf({ plan, standing }: { plan: Plan; standing: Standing }) {
  const work = plan.steps.filter((step) => step.part === "work").length;
  return (
    <>
      {plan.cautions?.map((caution) => <Notice tone="attention" key={caution}><p><Told of={toldText(caution)} /></p></Notice>)}
      <p><Told of={work > 0 ? toldAs("plan", { n: work }, plan.text) : toldText(plan.text)} /></p>
      <ol class="steps">{plan.steps.map((step) => <Step step={step} standing={standing} key={step.part + step.fence_id + step.requirement_id} />)}</ol>
      {plan.leave_alone.length > 0 && (
        <Section title={t("board.plan_leave")}>
          <ul class="reasons">{plan.leave_alone.map((left) => <li key={left.requirement_id}>{askedTitle(left)}: <Told of={toldLeft(left)} /></li>)}</ul>
        </Section>
      )}
      {plan.stop_when.length > 0 && (
        <Section title={t("board.plan_stop")}>
          <ul class="reasons">{plan.stop_when.map((each) => <li key={each}><Told of={toldText(each)} /></li>)}</ul>
        </Section>
      )}
    </>
  );
}

function Step({ step, standing }: { step: PlanStep; standing: Standing }) {
  const finding = standing.findings.find((each) => each.requirement_id === step.requirement_id);
  return (
    <li class="steps__step">
      <span class="steps__use"><strong>{t(`board.plan_${step.part}`)}.</strong> <Told of={toldPlanStep(step, finding)} /></span>
    </li>
  );
}
