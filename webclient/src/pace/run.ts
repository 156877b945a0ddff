// The stopwatch as a value: ready, running, or stopped. Every change is a pure function of the state, one
// sample of the clocks and what was asked for; screens draw the state and the store keeps it.

import type { MeasuredBy, Start, TimedCanterInput } from "../entries/bodies.ts";
import { type Judged, judge } from "./judge.ts";
import { keepable, SHORTEST_KEPT_MS } from "./plausible.ts";
import { addSample, type Sample, startTrace, type Trace } from "./trace.ts";

/** What is about to be timed: chosen before the start, copied into the run, so that no later edit moves it. */
export interface Plan {
  outing_id: string;
  track_id: string | null;
  distance_m: number;
  distance_u_m: number | null;
  measured_by: MeasuredBy;
  target_speed_mpm: number | null;
  level_id: string | null;
  start: Start;
  /** The time runs from the zero of a countdown of so many seconds, not from the tap. */
  countdown_s: number | null;
  /** The first canter of the set that this one repeats. */
  set_id: string | null;
  flags_m: number[];
  over_fences: boolean;
}

/** A run as it is kept on the phone. `id` becomes the record id of its timed canter. */
export interface Run {
  id: string;
  plan: Plan;
  trace: Trace;
  splits_ms: number[];
}

export type Watch =
  | { phase: "ready" }
  | { phase: "running"; run: Run }
  /** Stopped before anything can have been timed: asked about, the clock still kept. */
  | { phase: "short"; run: Run }
  | { phase: "stopped"; run: Run };

export const READY: Watch = { phase: "ready" };

/** A second tap this soon is the same tap: a bouncing finger or a nervous clicker. */
export const BOUNCE_MS = 300;
export const MOST_SPLITS = 99;

export function begin(id: string, plan: Plan, sample: Sample): Run {
  return { id, plan, trace: startTrace(sample), splits_ms: [] };
}

const countdownMs = ({ plan }: Run): number => 1000 * (plan.countdown_s ?? 0);

/** The run's time by all it has seen; before the zero of a countdown it is below zero. The clocks have run since
 * the tap, so that neither sleep nor a killed page moves the zero. */
export function timeOf(run: Run): Judged {
  const [judged, wait_ms] = [judge(run.trace), countdownMs(run)];
  const monotonic_ms = judged.monotonic_ms === null ? null : judged.monotonic_ms - wait_ms;
  return { ...judged, elapsed_ms: judged.elapsed_ms - wait_ms, monotonic_ms, wall_ms: judged.wall_ms - wait_ms };
}

/** The run's time at a sample, without keeping the sample. */
export function elapsedAt(run: Run, sample: Sample): Judged {
  return timeOf(seen(run, sample));
}

export function seen(run: Run, sample: Sample): Run {
  return { ...run, trace: addSample(run.trace, sample) };
}

/** Start. A run that is already going is never replaced: a second start is the same tap, or another tab's. */
export function pressStart(watch: Watch, id: string, plan: Plan, sample: Sample): Watch {
  return watch.phase === "ready" ? { phase: "running", run: begin(id, plan, sample) } : watch;
}

/** Stop. A bounce is dropped; before the zero of a countdown it calls the start off; a time too short to be one is
 * asked about, with the clock still kept. */
export function pressStop(watch: Watch, sample: Sample): Watch {
  if (watch.phase !== "running") return watch;
  const run = seen(watch.run, sample);
  const { elapsed_ms } = timeOf(run);
  if (elapsed_ms + countdownMs(run) < BOUNCE_MS) return watch;
  if (elapsed_ms < 0) return READY;
  return { phase: elapsed_ms < SHORTEST_KEPT_MS ? "short" : "stopped", run };
}

/** A flag passed on the way. */
export function pressSplit(watch: Watch, sample: Sample): Watch {
  if (watch.phase !== "running") return watch;
  const { elapsed_ms } = elapsedAt(watch.run, sample);
  const since = elapsed_ms - (watch.run.splits_ms.at(-1) ?? 0);
  if (since < BOUNCE_MS || watch.run.splits_ms.length >= MOST_SPLITS) return watch;
  const run = seen(watch.run, sample);
  return { phase: "running", run: { ...run, splits_ms: [...run.splits_ms, elapsed_ms] } };
}

/** A heartbeat, or the page hidden or shown again. */
export function tick(watch: Watch, sample: Sample): Watch {
  return watch.phase === "running" ? { phase: "running", run: seen(watch.run, sample) } : watch;
}

/** The stop was a slip: the clock has been kept since the start and runs on. */
export function resume(watch: Watch): Watch {
  return watch.phase === "short" || watch.phase === "stopped" ? { phase: "running", run: watch.run } : watch;
}

const WITNESSED_MS = 604_800_000;

// The schema holds a week; beyond that, and where it stood still across a countdown, a clock is no witness.
function reading(ms: number | null, least: number): number | null {
  return ms === null || ms < least || ms > WITNESSED_MS ? null : Math.round(ms);
}

// A run that an earlier version of the app kept knows nothing of these.
const SINCE_KEPT = { countdown_s: null, set_id: null, flags_m: [] };

/** The body of the timed canter, or null when the time is one that no canter can have. */
export function canterBody(run: Run, judged: Judged, note: string | null = null): Required<TimedCanterInput> | null {
  if (!keepable(judged.elapsed_ms)) return null;
  const elapsed_ms = Math.round(judged.elapsed_ms);
  return {
    ...SINCE_KEPT,
    ...run.plan,
    elapsed_ms,
    monotonic_ms: reading(judged.monotonic_ms, 0),
    wall_ms: reading(judged.wall_ms, -WITNESSED_MS),
    clock: judged.clock,
    splits_ms: run.splits_ms.map(Math.round).filter((split) => split < elapsed_ms),
    note,
  };
}
