// A set of intervals as a value: walks and canters on one clock, which is the stopwatch's own (pace/trace.ts,
// pace/judge.ts). Every change is a pure function of the set and one sample of the clocks, so that a reload, a
// killed page or a locked phone costs no second. After the last canter the same clock counts the recovery.

import type { WorkInterval } from "../entries/bodies.ts";
import { type Judged, judge } from "../pace/judge.ts";
import { BOUNCE_MS } from "../pace/run.ts";
import { addSample, type Sample, startTrace, type Trace } from "../pace/trace.ts";

/** What is about to be ridden; copied into the set, so that no later edit moves it. */
export interface SetPlan {
  outing_id: string;
  canters: number;
  work_s: number;
  walk_s: number;
  walk_first_s: number;
  /** The speed set out for the canters. */
  speed_mpm: number | null;
}

export type SegmentKind = "walk_first" | "canter" | "walk";

export interface Segment {
  kind: SegmentKind;
  length_ms: number;
}

/** A set as it is kept on the phone. `id` becomes the record id of its interval set. `ended_ms`: on the set's
 * clock, the end of the work; null while it goes on. `changes` counts the taps that changed it; `saved_changes` how many
 * there were when it was last saved as an entry, null when it was not. */
export interface SetRun {
  id: string;
  plan: SetPlan;
  segments: Segment[];
  trace: Trace;
  ended_ms: number | null;
  changes: number;
  saved_changes: number | null;
}

const LONGEST_SEGMENT_MS = 7_200_000;
/** The schema holds no shorter canter: a tap undone at once. */
const SHORTEST_CANTER_S = 5;

export function segmentsOf({ canters, work_s, walk_s, walk_first_s }: SetPlan): Segment[] {
  const first: Segment[] = walk_first_s > 0 ? [{ kind: "walk_first", length_ms: 1000 * walk_first_s }] : [];
  const rest = Array.from({ length: canters }, (_, n): Segment[] => [
    { kind: "canter", length_ms: 1000 * work_s },
    ...(n < canters - 1 ? [{ kind: "walk" as const, length_ms: 1000 * walk_s }] : []),
  ]);
  return [...first, ...rest.flat()];
}

export function totalMs(segments: readonly Segment[]): number {
  return segments.reduce((total, { length_ms }) => total + length_ms, 0);
}

export function beginSet(id: string, plan: SetPlan, sample: Sample): SetRun {
  return { id, plan, segments: segmentsOf(plan), trace: startTrace(sample), ended_ms: null, changes: 0, saved_changes: null };
}

/** The set's time at a sample, without keeping the sample. */
export function elapsedOf(run: SetRun, sample: Sample): Judged {
  return judge(addSample(run.trace, sample));
}

/** Where the set is at a time: which segment, how far into it, how much is left. Null when it is over. */
export interface Place {
  n: number;
  segment: Segment;
  into_ms: number;
  left_ms: number;
}

export function placeAt(segments: readonly Segment[], elapsed_ms: number): Place | null {
  let into_ms = Math.max(0, elapsed_ms);
  for (const [n, segment] of segments.entries()) {
    if (into_ms < segment.length_ms) return { n, segment, into_ms, left_ms: segment.length_ms - into_ms };
    into_ms -= segment.length_ms;
  }
  return null;
}

/** Which canter it is, or which one comes next, counted from 1. */
export function canterNumber(segments: readonly Segment[], n: number): number {
  const before = segments.slice(0, n).filter(({ kind }) => kind === "canter").length;
  return before + 1;
}

/** A heartbeat, or the page hidden or shown again. The work ends by itself when its time is over. */
export function seenSet(run: SetRun, sample: Sample): SetRun {
  const trace = addSample(run.trace, sample);
  const total = totalMs(run.segments);
  const over = run.ended_ms === null && judge(trace).elapsed_ms >= total;
  return { ...run, trace, ended_ms: over ? total : run.ended_ms };
}

// Nothing changes once the work is over, nor where `how` says that the tap was none.
function change(run: SetRun, sample: Sample, how: (place: Place) => Partial<SetRun> | null): SetRun {
  const seen = seenSet(run, sample);
  const place = seen.ended_ms === null ? placeAt(seen.segments, judge(seen.trace).elapsed_ms) : null;
  const changed = place && how(place);
  return changed ? { ...seen, ...changed, changes: seen.changes + 1 } : seen;
}

function withLength(segments: readonly Segment[], n: number, length_ms: number): Segment[] {
  return segments.map((segment, place) => (place === n ? { ...segment, length_ms } : segment));
}

/** On to what comes next, now: the canter or walk is as long as it was. A bounce is dropped. */
export function pressOn(run: SetRun, sample: Sample): SetRun {
  return change(run, sample, ({ n, into_ms }) => {
    if (into_ms < BOUNCE_MS) return null;
    const segments = withLength(run.segments, n, into_ms);
    return { segments, ended_ms: n === segments.length - 1 ? totalMs(segments) : null };
  });
}

/** The canter or walk of this moment takes `by_ms` longer. */
export function pressLonger(run: SetRun, sample: Sample, by_ms: number): SetRun {
  return change(run, sample, ({ n, segment }) => (
    { segments: withLength(run.segments, n, Math.min(LONGEST_SEGMENT_MS, segment.length_ms + by_ms)) }
  ));
}

/** The work ends here: what was not ridden is left out. */
export function pressEnd(run: SetRun, sample: Sample): SetRun {
  return change(run, sample, ({ n, into_ms }) => {
    const segments = withLength(run.segments, n, into_ms).slice(0, n + 1);
    return { segments, ended_ms: totalMs(segments) };
  });
}

/** A tap was a slip: the set as it was before it, on the clock that has been kept all along. */
export function undoChange(run: SetRun, before: SetRun): SetRun {
  return { ...run, segments: before.segments, ended_ms: before.ended_ms, changes: run.changes + 1 };
}

/** What was ridden, for the entry: each canter with the walk after it, in whole seconds, and the speed set out. */
export function ridden(segments: readonly Segment[], speed_mpm: number | null = null): WorkInterval[] {
  return segments.flatMap((segment, n) => {
    const work_s = Math.round(segment.length_ms / 1000);
    if (segment.kind !== "canter" || work_s < SHORTEST_CANTER_S) return [];
    const after = segments[n + 1];
    return [{ work_s, rest_s: after?.kind === "walk" ? Math.round(after.length_ms / 1000) : 0, speed_mpm }];
  });
}
