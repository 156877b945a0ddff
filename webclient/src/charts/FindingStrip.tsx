// One small post per required finding, filled by how far it is: the whole standing at a glance. The shapes
// differ, not only the colours; screen readers get the counts in words.

import type { FindingState, Standing } from "../board/standing.ts";
import { STATES } from "../board/standing.ts";
import { t } from "../words/index.ts";

const POST = 12;
const GAP = 4;
const HEIGHT = 28;

/** What is drawn inside a post, in a box of 12 by 28. */
const FILL: Record<FindingState, string> = {
  shown: "M1 1h10v26H1z",
  building: "M1 15h10v12H1z",
  untried: "",
  shaky: "M1 27l5-6 5 6zM1 19l5-6 5 6z",
  gone_stale: "M4 6h4v4H4zM4 18h4v4H4z",
  on_hold: "M1 1h3.5v26H1zM7.500 1H11v26H7.500z",
};

export function FindingStrip({ summary }: { summary: Standing["summary"] }) {
  const posts = STATES.flatMap((state) => Array.from({ length: summary.counts[state] }, () => state));
  const width = Math.max(POST, posts.length * (POST + GAP) - GAP);
  return (
    <svg class="strip" viewBox={`0 0 ${width} ${HEIGHT}`} width={width} height={HEIGHT} role="img" aria-label={inWords(summary)}>
      {posts.map((state, place) => <Post state={state} x={place * (POST + GAP)} key={place} />)}
    </svg>
  );
}

function Post({ state, x }: { state: FindingState; x: number }) {
  return (
    <g transform={`translate(${x} 0)`} class={`strip__post strip__post--${state}`}>
      <rect x="1" y="1" width="10" height="26" rx="1.5" class="strip__edge" />
      {FILL[state] && <path d={FILL[state]} class="strip__fill" />}
    </g>
  );
}

export function inWords(summary: Standing["summary"]): string {
  return t("board.strip", { ...summary.counts, required: summary.required });
}
