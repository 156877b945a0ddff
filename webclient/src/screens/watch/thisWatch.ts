// The one stopwatch of this page.

import { phone } from "./device.ts";
import { Stopwatch } from "./stopwatch.ts";

export const stopwatch = new Stopwatch(phone);

const LONGEST_TIED_MS = 7_200_000;

/** What ties an attempt of this outing to the canter that is running: its id and the time on its clock. */
export function runningCanter(outing_id: string): { canter_id: string; canter_offset_ms: number } | null {
  const [run, judged] = [stopwatch.run, stopwatch.elapsed()];
  if (run === null || judged === null || run.plan.outing_id !== outing_id || judged.elapsed_ms > LONGEST_TIED_MS) return null;
  return { canter_id: run.id, canter_offset_ms: Math.max(0, Math.round(judged.elapsed_ms)) };
}
