// When to flash and sound during a run: each second of a countdown and its zero; at the target time, so that the
// rider sees where she is when it is up; and at each whole minute, the rhythm of minute markers.

export type CueKind = "count" | "go" | "target" | "minute";

export interface Cue {
  kind: CueKind;
  at_ms: number;
}

const SECOND_MS = 1000;
export const MINUTE_MS = 60_000;

// the multiples of `step` after `since` and up to `now`
function each(step: number, since: number, now: number): number[] {
  const first = Math.floor(since / step) + 1;
  return Array.from({ length: Math.max(0, Math.floor(now / step) - first + 1) }, (_, n) => (first + n) * step);
}

/** The cues that fall after `sinceMs` and up to `nowMs`; a target on a whole minute is the target. Only a run with a
 * countdown has times of zero and below. */
export function cuesBetween(sinceMs: number, nowMs: number, targetMs: number | null): Cue[] {
  const counts = each(SECOND_MS, sinceMs, Math.min(0, nowMs)).map((at_ms): Cue => ({ kind: at_ms < 0 ? "count" : "go", at_ms }));
  const minutes = each(MINUTE_MS, Math.max(0, sinceMs), nowMs).filter((at_ms) => at_ms !== targetMs).map((at_ms): Cue => ({ kind: "minute", at_ms }));
  const target: Cue[] = targetMs !== null && targetMs > sinceMs && targetMs <= nowMs ? [{ kind: "target", at_ms: targetMs }] : [];
  return [...counts, ...minutes, ...target].sort((one, other) => one.at_ms - other.at_ms);
}

/** The next whole minute after `nowMs`, in ms. */
export function nextMinute(nowMs: number): number {
  return (Math.floor(Math.max(0, nowMs) / MINUTE_MS) + 1) * MINUTE_MS;
}
