import { useState } from "preact/hooks";

import type { Finding, Standing } from "../../board/standing.ts";
import { showHeight } from "../../units/index.ts";
import { t } from "../../words/index.ts";
import { askedTitle } from "../../words/told.ts";
import { type Now, quantitiesOf, sourceOf } from "./asked.ts";
import { BarForm } from "./BarForm.tsx";
import { ChangedBar } from "./ChangedBar.tsx";
import { inForce, shownNumber } from "./numbers.ts";
import { numberWords } from "./numberWords.ts";
import { Source } from "./Source.tsx";

interface Props {
  standing: Standing;
  finding: Finding;
  mayChange: boolean;
}

const AT_A_GLANCE = 2;

/** One requirement of the bar: its numbers at a glance; opened, each number and where it comes from. */
export function RequirementPart({ standing, finding, mayChange }: Props) {
  const [open, setOpen] = useState(false);
  const now: Now = { numbers: finding.bar?.numbers ?? {}, changes: finding.bar?.changes ?? [] };
  const quantities = quantitiesOf(now.numbers);
  const glance = quantities.slice(0, AT_A_GLANCE).map((quantity) => `${numberWords(quantity)}: ${shownNumber(quantity, now.numbers[quantity]!)}`);
  const least = finding.numbers["least_cm"];
  if (typeof least === "number") glance.push(t("bar.from", { size: showHeight(least) }));
  if (inForce(now.changes).length) glance.push(t("bar.changed"));
  return (
    <details class="card more" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary><span class="row__words"><span class="row__title">{askedTitle(finding)}</span><span class="row__detail">{glance.join(" · ")}</span></span></summary>
      {open && (
        <div class="form">
          <p class="quiet">{t("bar.source")} <Source of={finding.bar?.source ?? ""} /></p>
          <ChangedBar finding={finding} />
          {mayChange && <BarForm standing={standing} finding={finding} now={now} />}
          <ul class="rows">{quantities.map((quantity) => <Line quantity={quantity} value={now.numbers[quantity]!} source={sourceOf(finding.requirement_id, quantity)} key={quantity} />)}</ul>
        </div>
      )}
    </details>
  );
}

function Line({ quantity, value, source }: { quantity: string; value: number; source: string }) {
  return (
    <li class="row">
      <span class="row__link">
        <span class="row__words">
          <span>{numberWords(quantity)}</span>
          <span class="row__detail"><Source of={source} /></span>
        </span>
        <strong class="row__end">{shownNumber(quantity, value)}</strong>
      </span>
    </li>
  );
}
