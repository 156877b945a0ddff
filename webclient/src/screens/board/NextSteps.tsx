import { Link } from "wouter-preact";

import type { NextStep, Standing } from "../../board/standing.ts";
import { Section } from "../../parts/Card.tsx";
import { Told } from "../../parts/Told.tsx";
import { useRecords, type SavedRecord } from "../../store/book.ts";
import { t } from "../../words/index.ts";
import { toldStep } from "../../words/told.ts";

/** What to school next, in order, with the fences known to ask it. */
export function NextSteps({ standing }: { standing: Standing }) {
  const fences = useRecords("fence") ?? [];
  return (
    <Section title={t("board.next")}>
      {standing.next.length === 0 && <p class="empty">{t(standing.held ? "board.next_held" : "board.next_none")}</p>}
      <ol class="steps">
        {standing.next.map((step) => <Step step={step} standing={standing} fences={fences} key={step.requirement_id} />)}
      </ol>
    </Section>
  );
}

function Step({ step, standing, fences }: { step: NextStep; standing: Standing; fences: SavedRecord<"fence">[] }) {
  const labels = fences.filter((fence) => step.fence_ids.includes(fence.record_id)).map((fence) => fence.body.label);
  return (
    <li class="steps__step">
      <Link href={`/finding/${standing.horse_id}/${standing.level_id}/${encodeURIComponent(step.requirement_id)}`}><Told of={toldStep(step, standing.findings.find((each) => each.requirement_id === step.requirement_id))} /></Link>
      {labels.length > 0 && <span class="quiet steps__use">{t("board.use", { fences: labels.join(", ") })}</span>}
    </li>
  );
}
