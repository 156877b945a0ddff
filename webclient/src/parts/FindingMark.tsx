// The six states of a finding, each with its own small mark beside its word: a jump drawn over the rail, on
// it, or not at all. No two differ by colour alone.

import { t } from "../words/index.ts";

export type FindingState = "shown" | "building" | "untried" | "shaky" | "gone_stale" | "on_hold";

const RAIL = "M3 19h18M6 19v-6M18 19v-6M6 13h12";
const MARKS: Record<FindingState, string> = {
  shown: `${RAIL}M4 12C7 3 17 3 20 12`,
  building: `${RAIL}M4 12C6 6 9 4.5 12 4.5`,
  untried: "M3 19h18M6 19v-6M18 19v-6",
  shaky: `${RAIL}M3 10l3-4 3 4 3-4 3 4 3-4 3 4`,
  gone_stale: `${RAIL}M12 3a3.5 3.5 0 1 0 0 7 3.5 3.5 0 0 0 0-7M12 5v2h1.5`,
  on_hold: `${RAIL}M9.5 3v7M14.5 3v7`,
};

/** The mark and the word of a finding's state. */
export function FindingMark({ state }: { state: FindingState }) {
  return (
    <span class={`mark mark--${state}`}>
      <svg class="mark__drawing" viewBox="0 0 24 24" aria-hidden="true" focusable="false">
        <path d={MARKS[state]} fill="none" stroke="currentColor" stroke-width="2" stroke-linecap="round" stroke-linejoin="round" />
      </svg>
      <span class="mark__word">{t(`state.${state}`)}</span>
    </span>
  );
}
