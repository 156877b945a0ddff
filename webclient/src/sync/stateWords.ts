// The state in words: saved here, n waiting since …, sending, all sent at hh:mm, n need you.

import type { Values } from "../words/speak.ts";
import type { SyncState } from "./state.ts";

export interface StateWords {
  key: string;
  values: Values;
  /** all is sent; something waits; somebody has to look. */
  tone: "quiet" | "waiting" | "attention";
}

/** The one sentence for the top of every screen. `clock` and `moment` put times into words. */
export function stateWords(state: SyncState, moment: (instant: string | number) => string): StateWords {
  if (state.phase !== "idle") return moving(state);
  if (state.needs_you > 0) return { key: "sync.needs_you", values: { n: state.needs_you }, tone: "attention" };
  if (state.waiting > 0) return waiting(state, moment);
  return rested(state, moment);
}

function moving({ phase, done, total }: SyncState): StateWords {
  const key = total > 0 ? `sync.${phase}_of` : `sync.${phase}`;
  return { key, values: { done, total }, tone: "waiting" };
}

function waiting(state: SyncState, moment: (instant: string) => string): StateWords {
  const values = { n: state.waiting, since: state.oldest_waiting ? moment(state.oldest_waiting) : "" };
  const key = state.trouble ? `sync.waiting_${state.trouble}` : "sync.waiting";
  return { key, values, tone: state.trouble && state.trouble !== "offline" ? "attention" : "waiting" };
}

function rested(state: SyncState, moment: (instant: number) => string): StateWords {
  if (state.trouble && state.trouble !== "offline") return { key: `sync.${state.trouble}`, values: {}, tone: "attention" };
  if (state.photos > 0) return { key: state.voices ? "sync.media_waiting" : "sync.photos_waiting", values: { n: state.photos }, tone: "waiting" };
  if (state.last_sent_at_ms === null) return { key: "sync.nothing_yet", values: {}, tone: "quiet" };
  return { key: "sync.all_sent", values: { at: moment(state.last_sent_at_ms) }, tone: "quiet" };
}
