import { Link } from "wouter-preact";

import { canBeDrawn } from "../../board/evidencePicture.ts";
import type { EvidenceLine, Reason } from "../../board/standing.ts";
import { EvidencePicture } from "../../charts/EvidencePicture.tsx";
import { Section } from "../../parts/Card.tsx";
import { FindingMark } from "../../parts/FindingMark.tsx";
import { Screen } from "../../parts/Screen.tsx";
import { Told } from "../../parts/Told.tsx";
import { showDay } from "../../words/dates.ts";
import { knows, say, t } from "../../words/index.ts";
import { askedTitle, toldMeasured, toldReason, toldWorkedOut } from "../../words/told.ts";
import "../../style/board.css";
import { ChangedByCoach } from "../bar/ChangedBar.tsx";
import { AsOf } from "./AsOf.tsx";
import { Missing } from "./Missing.tsx";
import { useInFull } from "./useInFull.ts";
import { useStanding } from "./useStandingList.ts";

interface Props {
  params: { horseId: string; levelId: string; requirementId: string };
}

/** One requirement weighed: why, what is missing, the picture, the attempts behind it, how it is worked out. */
export function FindingScreen({ params }: Props) {
  const standing = useStanding(params.horseId, params.levelId);
  const back = `/board/${params.horseId}/${params.levelId}`;
  const kept = standing?.findings.find((each) => each.requirement_id === decodeURIComponent(params.requirementId));
  const finding = useInFull(kept, params);
  if (standing === undefined) return <Screen title={t("board.title")} back={back}>{null}</Screen>;
  if (!standing || !finding) return <Missing back={back} horseId={params.horseId} />;
  return (
    <Screen title={askedTitle(finding)} back={back}>
      <p><FindingMark state={finding.state} /> <span class="quiet">{standing.level_name}</span></p>
      <Reasons title={t("finding.why")} reasons={finding.reasons} />
      <Reasons title={t("finding.needs")} reasons={finding.needs} />
      <ChangedByCoach finding={finding} />
      {finding.evidence
        ? <><Picture evidence={finding.evidence} asOf={standing.as_of} /><Evidence evidence={finding.evidence} /></>
        : <p class="empty">{t("finding.far")}</p>}
      {finding.explanation && (
        <details class="card">
          <summary class="more__summary">{t("finding.worked_out")}</summary>
          <p><Told of={toldWorkedOut(finding)} /></p>
        </details>
      )}
      <AsOf standing={standing} />
    </Screen>
  );
}

function Reasons({ title, reasons }: { title: string; reasons: Reason[] }) {
  if (!reasons.length) return null;
  return (
    <Section title={title}>
      <ul class="reasons">{reasons.map((reason) => <li key={reason.code + reason.text}><Told of={toldReason(reason)} /></li>)}</ul>
    </Section>
  );
}

function Picture({ evidence, asOf }: { evidence: EvidenceLine[]; asOf: string }) {
  if (!canBeDrawn(evidence)) return null;
  return <Section title={t("finding.picture")}><EvidencePicture evidence={evidence} asOf={asOf} /></Section>;
}

function Evidence({ evidence }: { evidence: EvidenceLine[] }) {
  const newestFirst = [...evidence].sort((a, b) => b.local_date.localeCompare(a.local_date));
  return (
    <Section title={t("finding.evidence")}>
      {evidence.length === 0 && <p class="empty">{t("finding.no_evidence")}</p>}
      <ul class="rows">{newestFirst.map((line) => <Line line={line} key={line.record_id} />)}</ul>
    </Section>
  );
}

function Line({ line }: { line: EvidenceLine }) {
  const outcome = outcomeOf(line);
  const told = <><span class="row__title">{NAMED_BY_PEOPLE.has(line.kind) ? line.label : <Told of={toldMeasured(line.label)} />}</span><span class="row__detail">{showDay(line.local_date)}</span></>;
  return (
    <li class="row">
      {line.outing_id
        ? <Link class="row__link" href={`/timeline/${line.outing_id}`}><span class="row__words">{told}</span><span class="row__end">{outcome}</span></Link>
        : <span class="row__link"><span class="row__words">{told}</span><span class="row__end">{outcome}</span></span>}
    </li>
  );
}

const NAMED_BY_PEOPLE = new Set(["attempt", "flatwork_test", "event_result", "word"]);
const WORDS_FOR: Record<string, readonly string[]> = {
  attempt: ["outcome", "attitude"], outing: ["activity"], event_result: ["event_status"], word: ["decision"],
};

/** In the language of the page: what happened at an attempt, what was done on an outing, else what the server says. */
function outcomeOf({ kind, outcome }: EvidenceLine) {
  const key = WORDS_FOR[kind]?.map((words) => `${words}.${outcome}`).find(knows);
  return key ? say({ key }) : <Told of={toldMeasured(outcome ?? "")} />;
}
