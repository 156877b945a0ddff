import { byPhase, mostUrgentFirst } from "../../board/ladder.ts";
import type { Finding, Standing } from "../../board/standing.ts";
import { FindingStrip } from "../../charts/FindingStrip.tsx";
import { Row, Rows, Section } from "../../parts/Card.tsx";
import { FindingMark } from "../../parts/FindingMark.tsx";
import { Notice } from "../../parts/Notice.tsx";
import { Screen } from "../../parts/Screen.tsx";
import { Told } from "../../parts/Told.tsx";
import { useRecord } from "../../store/book.ts";
import { t } from "../../words/index.ts";
import { askedTitle, toldAs, toldReason, toldText } from "../../words/told.ts";
import "../../style/board.css";
import { AsOf } from "./AsOf.tsx";
import { CoachWord } from "./CoachWord.tsx";
import { ForecastPart } from "./ForecastPart.tsx";
import { Missing } from "./Missing.tsx";
import { MoreOfLevel } from "./MoreOfLevel.tsx";
import { NextSteps } from "./NextSteps.tsx";
import { useStanding } from "./useStandingList.ts";

interface Props {
  params: { horseId: string; levelId: string };
}

/** One level for one horse: the word, what is asked and how far each ask is, what to school next. */
export function LevelBoard({ params }: Props) {
  const standing = useStanding(params.horseId, params.levelId);
  const horse = useRecord("horse", params.horseId);
  if (standing === undefined) return <Screen title={t("board.title")} back="/board">{null}</Screen>;
  if (standing === null) return <Missing back="/board" horseId={params.horseId} />;
  const title = horse ? `${horse.body.name}, ${standing.level_name}` : standing.level_name;
  return (
    <Screen title={title} back="/board" wide>
      <p><Told of={toldAs("summary", { ...standing.summary.counts, required: standing.summary.required }, standing.summary.sentence)} /></p>
      <FindingStrip summary={standing.summary} />
      {standing.cautions.map((caution, place) => (
        <Notice tone={place < overriding(standing) ? "attention" : "plain"} key={caution}><p><Told of={toldText(caution)} /></p></Notice>
      ))}
      <div class="two-columns">
        <div>
          <CoachWord standing={standing} />
          <NextSteps standing={standing} />
          <MoreOfLevel standing={standing} />
          <ForecastPart forecast={standing.forecast} />
          <AsOf standing={standing} />
        </div>
        <Findings standing={standing} />
      </div>
    </Screen>
  );
}

/** How many of the cautions override what is counted: those before the one that always stands there, which only “a
 * clean sheet is no proof” follows. */
function overriding({ cautions, summary }: Standing): number {
  return cautions.length - (summary.complete ? 2 : 1);
}

function Findings({ standing }: { standing: Standing }) {
  return (
    <div class="findings">
      {byPhase(standing.findings).map(({ phase, findings }) => (
        <Section title={t(`phase.${phase}`)} key={phase}>
          <Rows>{mostUrgentFirst(findings).map((finding) => <FindingRow finding={finding} standing={standing} key={finding.requirement_id} />)}</Rows>
        </Section>
      ))}
    </div>
  );
}

function FindingRow({ finding, standing }: { finding: Finding; standing: Standing }) {
  const address = `/finding/${standing.horse_id}/${standing.level_id}/${encodeURIComponent(finding.requirement_id)}`;
  const told = finding.state === "shown" ? finding.reasons[0] : (finding.needs[0] ?? finding.reasons[0]);
  const extra = finding.required ? "" : ` (${t("board.not_required")})`;
  return (
    <Row
      href={address}
      title={<span class="finding__title"><FindingMark state={finding.state} />{askedTitle(finding) + extra}</span>}
      detail={told && <Told of={toldReason(told)} />}
    />
  );
}
