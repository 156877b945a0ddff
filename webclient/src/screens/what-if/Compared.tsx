import type { Answer, Comparison } from "../../board/whatIf.ts";
import { FindingStrip } from "../../charts/FindingStrip.tsx";
import { Section } from "../../parts/Card.tsx";
import { FindingMark, type FindingState } from "../../parts/FindingMark.tsx";
import { Notice } from "../../parts/Notice.tsx";
import { Told } from "../../parts/Told.tsx";
import { t } from "../../words/index.ts";
import { askedTitle, toldText } from "../../words/told.ts";

/** The answer to a what-if: both standings at a glance, and each finding that would differ. */
export function Compared({ answer }: { answer: Answer | null }) {
  if (!answer) return null;
  if ("trouble" in answer) return <Notice tone="attention" urgent><p>{answer.trouble === "offline" ? t("whatif.offline") : <Told of={toldText(answer.trouble)} />}</p></Notice>;
  return <Changes comparison={answer.comparison} />;
}

function Changes({ comparison }: { comparison: Comparison }) {
  const { before, after, changes } = comparison;
  return (
    <Section title={changes.length ? t("whatif.changes", { n: changes.length }) : t("whatif.no_change")}>
      <p class="quiet">{t("whatif.now")}</p>
      <FindingStrip summary={before.summary} />
      <p class="quiet">{t("whatif.then")}</p>
      <FindingStrip summary={after.summary} />
      <ul class="rows">
        {changes.map((change) => (
          <li class="row" key={change.requirement_id}>
            <span class="row__link"><span class="row__words">
              <span class="row__title">{askedTitle(change)}</span>
              <span class="change"><State state={change.before} /> <span aria-hidden="true">→</span> <State state={change.after} /></span>
            </span></span>
          </li>
        ))}
      </ul>
    </Section>
  );
}

function State({ state }: { state: FindingState | null }) {
  return state ? <FindingMark state={state} /> : <span class="quiet">{t("whatif.absent")}</span>;
}
