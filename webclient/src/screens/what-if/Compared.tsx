import { useEffect, useRef } from "preact/hooks";

import type { Finding } from "../../board/standing.ts";
import { missingOf, moved, type Answer, type Comparison, type Moved } from "../../board/whatIf.ts";
import { FindingStrip } from "../../charts/FindingStrip.tsx";
import { Section } from "../../parts/Card.tsx";
import { FindingMark } from "../../parts/FindingMark.tsx";
import { Notice } from "../../parts/Notice.tsx";
import { Told } from "../../parts/Told.tsx";
import { showDay } from "../../words/dates.ts";
import { t } from "../../words/index.ts";
import { askedTitle, toldReason, toldText } from "../../words/told.ts";

/** The answer to a what-if: both standings at a glance, and each finding that would differ. */
export function Compared({ answer }: { answer: Answer | null }) {
  if (!answer) return null;
  if ("trouble" in answer) return <Notice tone="attention" urgent><p>{answer.trouble === "offline" ? t("whatif.offline") : <Told of={toldText(answer.trouble)} />}</p></Notice>;
  return <Changes comparison={answer.comparison} />;
}

function Changes({ comparison }: { comparison: Comparison }) {
  const { before, after } = comparison;
  const found = moved(comparison);
  const answer = useRef<HTMLDivElement>(null);
  useEffect(() => answer.current?.scrollIntoView({ block: "start" }), [comparison]);
  const past = after.as_of < before.as_of;
  return (
    <div aria-live="polite" ref={answer}>
      <Section title={found.length ? t(past ? "whatif.differ" : "whatif.changes", { n: found.length }) : t("whatif.no_change")}>
        <p class="quiet">{t("whatif.now")}</p>
        <FindingStrip summary={before.summary} />
        <p class="quiet">{past ? t("whatif.then_on", { day: showDay(after.as_of) }) : t("whatif.then")}</p>
        <FindingStrip summary={after.summary} />
        <Chance before={before.forecast?.clear_chance} after={after.forecast?.clear_chance} />
        <ul class="rows">{found.map((each) => <Change change={each} key={each.requirement_id} />)}</ul>
      </Section>
    </div>
  );
}

/** The forecast's chance of a clear round, where it speaks both times. */
function Chance({ before, after }: { before: number | undefined; after: number | undefined }) {
  if (before === undefined || after === undefined) return null;
  return <p><Told of={{ words: t("whatif.chance", { now: Math.round(100 * before), then: Math.round(100 * after) }) }} /></p>;
}

function Change({ change: { requirement_id, title, before, after } }: { change: Moved }) {
  return (
    <li class="row">
      <span class="row__link"><span class="row__words">
        <span class="row__title">{askedTitle({ requirement_id, title })}</span>
        <span class="change"><State finding={before} />{before?.state !== after?.state && <> <span aria-hidden="true">→</span> <State finding={after} /></>}</span>
        <Missing words="whatif.missing_now" finding={before} />
        <Missing words="whatif.missing_then" finding={after} />
      </span></span>
    </li>
  );
}

function Missing({ words, finding }: { words: "whatif.missing_now" | "whatif.missing_then"; finding: Finding | null }) {
  const needs = missingOf(finding);
  if (!finding) return null;
  return <span class="row__detail">{t(words)} {needs.length ? needs.map((need) => <><Told of={toldReason(need)} /> </>) : t("whatif.missing_nothing")}</span>;
}

function State({ finding }: { finding: Finding | null }) {
  return finding ? <FindingMark state={finding.state} /> : <span class="quiet">{t("whatif.absent")}</span>;
}
