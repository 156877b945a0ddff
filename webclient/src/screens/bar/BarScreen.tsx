import { FINDING_PHASES, type Standing } from "../../board/standing.ts";
import { Section } from "../../parts/Card.tsx";
import { Screen } from "../../parts/Screen.tsx";
import { useRecords, useRole } from "../../store/book.ts";
import { say, t } from "../../words/index.ts";
import "../../style/bar.css";
import "../../style/board.css";
import { Missing } from "../board/Missing.tsx";
import { useStanding } from "../board/useStandingList.ts";
import { Changes } from "./Changes.tsx";
import { RequirementPart } from "./RequirementPart.tsx";

/** What the bar of this level asks, where each number comes from, and who changed what and why; the coach changes
 * it here. */
export function BarScreen({ params }: { params: { horseId: string; levelId: string } }) {
  const standing = useStanding(params.horseId, params.levelId);
  const mayChange = useRole() === "coach";
  const changes = useRecords("bar_change") ?? [];
  const back = `/board/${params.horseId}/${params.levelId}`;
  if (standing === null) return <Missing back={back} horseId={params.horseId} />;
  if (!standing) return <Screen title={t("board.bar")} back={back}>{null}</Screen>;
  const mine = changes.filter(({ body }) => body.rulebook_id === standing.rulebook_id && body.level_id === standing.level_id);
  return (
    <Screen title={t("bar.title", { level: standing.level_name })} back={back}>
      <p class="quiet">{t("bar.about")} {mayChange ? t("bar.coach_how") : t("bar.coach_only")}</p>
      {mine.length > 0 && <Changes changes={mine} may={mayChange} />}
      {FINDING_PHASES.map((phase) => <Phase key={phase} phase={phase} standing={standing} mayChange={mayChange} />)}
      {mine.length === 0 && <Changes changes={mine} may={mayChange} />}
    </Screen>
  );
}

function Phase({ phase, standing, mayChange }: { phase: (typeof FINDING_PHASES)[number]; standing: Standing; mayChange: boolean }) {
  const findings = standing.findings.filter((each) => each.phase === phase);
  if (!findings.length) return null;
  return (
    <Section title={say({ key: `phase.${phase}` })}>
      <div class="bar-list">{findings.map((finding) => <RequirementPart key={finding.requirement_id} standing={standing} finding={finding} mayChange={mayChange} />)}</div>
    </Section>
  );
}
