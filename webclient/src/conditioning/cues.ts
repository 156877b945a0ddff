// When to flash and sound during a set, and afterwards at the minutes at which recovery is judged.

import { type Segment, totalMs } from "./set.ts";

export type SetCueKind = "ready" | "canter" | "walk" | "over" | "check";

export interface SetCue {
  kind: SetCueKind;
  at_ms: number;
}

/** How long before a canter to gather the reins. */
export const READY_MS = 10_000;

/** Minutes after the work at which the gates and the horse's own normals ask. */
export const CHECK_MINUTES = [2, 10, 30, 45] as const;

/** Every cue of a set, in order of time. */
export function cuesOf(segments: readonly Segment[]): SetCue[] {
  const cues: SetCue[] = [];
  let at_ms = 0;
  for (const { kind, length_ms } of segments) {
    if (at_ms > 0) cues.push(...(kind === "canter" ? [{ kind: "ready" as const, at_ms: at_ms - READY_MS }, { kind: "canter" as const, at_ms }] : [{ kind: "walk" as const, at_ms }]));
    at_ms += length_ms;
  }
  const checks = CHECK_MINUTES.map((minute) => ({ kind: "check" as const, at_ms: at_ms + 60_000 * minute }));
  return [...cues, { kind: "over", at_ms }, ...checks];
}

/** The newest cue after `since_ms` and up to `now_ms`; null when none fell due. */
export function cueBetween(segments: readonly Segment[], since_ms: number, now_ms: number): SetCue | null {
  return cuesOf(segments).findLast((cue) => cue.at_ms > since_ms && cue.at_ms <= now_ms) ?? null;
}

/** The next minute to take the rates at, in minutes after the work; null when all have passed. */
export function nextCheck(segments: readonly Segment[], elapsed_ms: number): { minute: number; in_ms: number } | null {
  const since_ms = elapsed_ms - totalMs(segments);
  const minute = CHECK_MINUTES.find((each) => 60_000 * each > since_ms);
  return minute === undefined ? null : { minute, in_ms: 60_000 * minute - since_ms };
}

/** The set minute a check taken now belongs to; a whole minute when none is near. */
export function minuteOf(since_ms: number): number {
  const minutes = since_ms / 60_000;
  const near = CHECK_MINUTES.find((each) => Math.abs(minutes - each) <= Math.max(1, each / 10));
  return near ?? Math.max(0, Math.round(minutes));
}
