// The one stopwatch of this page.

import { Recorder } from "../trace/recorder.ts";
import { phone } from "./device.ts";
import { Stopwatch } from "./stopwatch.ts";

export const stopwatch = new Stopwatch(phone);

/** Beside it, for those who asked: where the phone is while the time runs. */
export const recorder = new Recorder(stopwatch);

const LONGEST_TIED_MS = 7_200_000;

/** What ties an attempt of this outing to the canter that is running: its id and the time on its clock. */
export function runningCanter(outing_id: string): { canter_id: string; canter_offset_ms: number } | null {
  const [run, judged] = [stopwatch.run, stopwatch.elapsed()];
  if (run === null || judged === null || run.plan.outing_id !== outing_id) return null;
  if (judged.elapsed_ms < 0 || judged.elapsed_ms > LONGEST_TIED_MS) return null; // not begun, or forgotten
  return { canter_id: run.id, canter_offset_ms: Math.round(judged.elapsed_ms) };
}
