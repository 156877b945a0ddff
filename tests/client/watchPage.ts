// A page with the stopwatch on the fake phone, and what its disk holds.

import { Stopwatch } from "../../webclient/src/screens/watch/stopwatch.ts";
import { here } from "../../webclient/src/store/place.ts";
import { findRecords } from "../../webclient/src/store/read.ts";
import { PhonePage } from "./phonePage.ts";

export class WatchPage extends PhonePage {
  stopwatch = new Stopwatch(this.device);

  get phase(): string {
    return this.stopwatch.watch.value.phase;
  }
}

export const canters = async () => (await findRecords(here(), "timed_canter", {})).map((row) => row.body as Record<string, unknown>);
export const runs = async () => here().db.runs.toArray();
/** Writes that nobody waits for have reached the disk. */
export const quiet = () => new Promise((resolve) => setTimeout(resolve, 30));
