// What the two clocks did during a run, as a chain of stretches of four kinds. The stopwatch takes a paired
// sample each half second, at each tap and each time the page is hidden or shown; only where the kind
// changes does the chain grow.

import type { Reading } from "./reading.ts";

/** A reading with the page's life it belongs to, and whether the page could be seen. */
export interface Sample extends Reading {
  page_id: string;
  visible: boolean;
}

/**
 * watched: on screen and ticking. stepped: on screen and ticking, yet one clock jumped against the other.
 * away: hidden, or the ticking paused while the clocks parted. lost: from one page's life to the next.
 */
export type StretchKind = "watched" | "stepped" | "away" | "lost";

export interface Stretch {
  kind: StretchKind;
  monotonic_ms: number;
  wall_ms: number;
}

export interface Trace {
  first: Sample;
  last: Sample;
  stretches: Stretch[];
}

/** Clocks that part by more than this between two samples did not just tick unevenly. */
export const STEP_MS = 250;
/** The page ticks twice a second; silence longer than this means that it was suspended. */
export const SILENCE_MS = 3000;

export function startTrace(sample: Sample): Trace {
  return { first: sample, last: sample, stretches: [] };
}

/** How far the wall clock ran ahead of the monotonic one, in ms. */
export function jump(stretch: Stretch): number {
  return stretch.wall_ms - stretch.monotonic_ms;
}

function kindOf(before: Sample, after: Sample, gap: Stretch): StretchKind {
  if (before.page_id !== after.page_id) return "lost";
  if (!before.visible || !after.visible) return "away";
  if (Math.abs(jump(gap)) <= STEP_MS) return "watched";
  return gap.monotonic_ms > SILENCE_MS ? "away" : "stepped";
}

function gapBetween(before: Sample, after: Sample): Stretch {
  const gap: Stretch = {
    kind: "watched",
    monotonic_ms: after.monotonic_ms - before.monotonic_ms,
    wall_ms: after.wall_ms - before.wall_ms,
  };
  gap.kind = kindOf(before, after, gap);
  return gap.kind === "lost" ? { ...gap, monotonic_ms: 0 } : gap;
}

function join(one: Stretch, other: Stretch): Stretch {
  return {
    kind: one.kind,
    monotonic_ms: one.monotonic_ms + other.monotonic_ms,
    wall_ms: one.wall_ms + other.wall_ms,
  };
}

// A hidden time is one stretch however often the page ticked in it, so that many short naps add up.
function joins(last: Stretch | undefined, gap: Stretch): last is Stretch {
  return last !== undefined && last.kind === gap.kind && (gap.kind === "watched" || gap.kind === "away");
}

export function addSample(trace: Trace, sample: Sample): Trace {
  const gap = gapBetween(trace.last, sample);
  const last = trace.stretches.at(-1);
  const stretches = joins(last, gap)
    ? [...trace.stretches.slice(0, -1), join(last, gap)]
    : [...trace.stretches, gap];
  return { first: trace.first, last: sample, stretches };
}
