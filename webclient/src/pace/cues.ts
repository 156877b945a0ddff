// When to flash and sound during a run: at the target time, so that the rider sees where she is when it is
// up, and at each whole minute, the rhythm of minute markers.

export interface Cue {
  kind: "target" | "minute";
  at_ms: number;
}

/** The cues that fall after `sinceMs` and up to `nowMs`; a target on a whole minute is the target. */
export function cuesBetween(sinceMs: number, nowMs: number, targetMs: number | null): Cue[] {
  const cues: Cue[] = [];
  for (let at = (Math.floor(sinceMs / 60_000) + 1) * 60_000; at <= nowMs; at += 60_000) {
    if (at !== targetMs) cues.push({ kind: "minute", at_ms: at });
  }
  if (targetMs !== null && targetMs > sinceMs && targetMs <= nowMs) cues.push({ kind: "target", at_ms: targetMs });
  return cues.sort((one, other) => one.at_ms - other.at_ms);
}
