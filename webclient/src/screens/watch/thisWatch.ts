// The one stopwatch of this page.

import { phone } from "./device.ts";
import { Stopwatch } from "./stopwatch.ts";

export const stopwatch = new Stopwatch(phone);

/** The canter that is running, for an attempt tapped during it; null when nothing runs. */
export function runningCanter(): { canter_id: string; canter_offset_ms: number } | null {
  const [run, judged] = [stopwatch.run, stopwatch.elapsed()];
  return run === null || judged === null ? null : { canter_id: run.id, canter_offset_ms: Math.round(judged.elapsed_ms) };
}
