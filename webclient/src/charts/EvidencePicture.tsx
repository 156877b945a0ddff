// The evidence behind a finding over time: good above, not good below, smaller where it counts for less.

import { dots, spanDays, type Dot } from "../board/evidencePicture.ts";
import type { EvidenceLine } from "../board/standing.ts";
import { showShortDay } from "../words/dates.ts";
import { t } from "../words/index.ts";

const WIDTH = 320;
const LEFT = 12;
const RIGHT = 12;
const LANE = { good: 62, bad: 84 };
const STACK = 11;
const RADIUS = 5;
const AXIS = 104;

export function EvidencePicture({ evidence, asOf }: { evidence: EvidenceLine[]; asOf: string }) {
  const placed = dots(evidence, asOf);
  const bad = placed.filter((dot) => dot.lane === "bad").length;
  const span = spanDays(evidence, asOf);
  const top = Math.min(40, LANE.good - STACK * Math.min(4, Math.max(0, ...placed.map((dot) => (dot.lane === "good" ? dot.stack : 0)))) - 18);
  const said = t("finding.picture_said", { good: placed.length - bad, bad, n: span });
  return (
    <figure class="evidence">
      <svg viewBox={`0 ${top} ${WIDTH} ${122 - top}`} class="evidence__drawing" role="img" aria-label={said}>
        <line x1={LEFT} x2={WIDTH - RIGHT} y1="73" y2="73" class="evidence__rail" />
        <text x={LEFT} y={AXIS + 12} class="evidence__text">{showShortDay(dayBefore(asOf, span))}</text>
        <text x={WIDTH - RIGHT} y={AXIS + 12} class="evidence__text evidence__text--end">{showShortDay(asOf)}</text>
        {placed.map((dot) => <Mark dot={dot} key={dot.record_id} />)}
      </svg>
      <figcaption class="quiet">{said} {t("finding.faded")}</figcaption>
    </figure>
  );
}

function Mark({ dot }: { dot: Dot }) {
  const x = LEFT + dot.across * (WIDTH - LEFT - RIGHT);
  const r = RADIUS * dot.size;
  const shift = Math.min(dot.stack, 4) * STACK * (dot.lane === "good" ? -1 : 0.5);
  const y = LANE[dot.lane] + shift;
  if (dot.lane === "good") return <circle cx={x} cy={y} r={r} class="evidence__good" />;
  return <path d={`M${x - r} ${y - r}l${2 * r} ${2 * r}M${x + r} ${y - r}l${-2 * r} ${2 * r}`} class="evidence__bad" />;
}

function dayBefore(day: string, days: number): string {
  return new Date(Date.parse(day) - days * 86_400_000).toISOString().slice(0, 10);
}
