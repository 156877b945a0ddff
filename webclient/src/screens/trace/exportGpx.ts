import { handOver } from "../../copies/handOver.ts";
import { civilDate } from "../../entries/entry.ts";
import type { Trace } from "../../entries/bodies.ts";
import { writeGpx } from "../../gpx/write.ts";

/** Hands over these traces as one GPX file, named by the day of the first. */
export function exportGpx(traces: Trace[]): Promise<boolean> {
  const day = civilDate(new Date(traces.find((trace) => trace.started_at_ms !== null)?.started_at_ms ?? Date.now()));
  return handOver(`fieldtally-${day}.gpx`, [writeGpx(traces, Date.now())], "application/gpx+xml");
}
