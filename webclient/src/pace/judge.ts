// From the chain of stretches to one elapsed time: for each stretch the clock that can be believed there.
//
// - watched, stepped: the page was on screen and ticking, so the phone was awake: the monotonic clock. If
//   the wall clock parted from it, somebody or something changed the wall clock.
// - away: the phone may have slept. A wall clock ahead of the monotonic one says for how long: the wall
//   clock. A wall clock behind can only have been put back: the monotonic clock, which may miss a sleep.
// - lost: the page was gone; only the wall clock lived on.
//
// What no clock of a web page can tell: a wall clock changed while the page was hidden or gone. The result
// is then marked, never silent, and the other reading stays on offer. (performance.timeOrigin is no third
// witness: it is read from the same wall clock when a page opens.)

import type { ClockVerdict } from "../entries/bodies.ts";
import { jump, STEP_MS, type Stretch, type Trace } from "./trace.ts";

export interface Judged {
  elapsed_ms: number;
  /** The raw readings; monotonic is null when the run lived in more than one page. */
  monotonic_ms: number | null;
  wall_ms: number;
  clock: ClockVerdict;
  /** False where the clocks leave a doubt that only the person can settle. */
  sure: boolean;
}

/** While hidden, the wall clock is believed from this lead on: more than reading two clocks can scatter. */
const NAP_MS = 50;

type Doubt = Exclude<ClockVerdict, "agree"> | null;

interface Weighed {
  ms: number;
  doubt: Doubt;
  sure: boolean;
}

function weighAway(stretch: Stretch): Weighed {
  const ahead = jump(stretch);
  if (ahead > NAP_MS) return { ms: stretch.wall_ms, doubt: "slept", sure: true };
  const putBack = ahead < -STEP_MS;
  return { ms: stretch.monotonic_ms, doubt: putBack ? "wall_changed" : null, sure: !putBack };
}

function weigh(stretch: Stretch): Weighed {
  if (stretch.kind === "lost") return { ms: Math.max(0, stretch.wall_ms), doubt: "restored", sure: stretch.wall_ms >= 0 };
  if (stretch.kind === "away") return weighAway(stretch);
  return { ms: stretch.monotonic_ms, doubt: stretch.kind === "stepped" ? "wall_changed" : null, sure: true };
}

// The mark that says most about the time shown: restored before slept before wall_changed.
function clockOf(weighed: Weighed[], drift: number): ClockVerdict {
  for (const mark of ["restored", "slept", "wall_changed"] as const) {
    if (weighed.some((part) => part.doubt === mark)) return mark;
  }
  return Math.abs(drift) > STEP_MS ? "wall_changed" : "agree";
}

const sum = (values: number[]): number => values.reduce((total, value) => total + value, 0);

/** The elapsed time from the first to the last sample of a trace. */
export function judge(trace: Trace): Judged {
  const weighed = trace.stretches.map(weigh);
  const monotonic = sum(trace.stretches.map((stretch) => stretch.monotonic_ms));
  const wall = sum(trace.stretches.map((stretch) => stretch.wall_ms));
  const lost = trace.stretches.some((stretch) => stretch.kind === "lost");
  return {
    elapsed_ms: sum(weighed.map((part) => part.ms)),
    monotonic_ms: lost ? null : monotonic,
    wall_ms: wall,
    clock: clockOf(weighed, wall - monotonic),
    sure: weighed.every((part) => part.sure),
  };
}
