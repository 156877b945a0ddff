// Records where the phone is while the stopwatch runs, if the rider asked for it. A page that is thrown away or
// killed goes on where it is opened again, with a gap in between. When the canter is saved the points become one
// trace beside it; the time never depends on them.

import { effect, signal, untracked } from "@preact/signals";

import { uuid7 } from "../../entries/uuid7.ts";
import { type Fix, type Locator, type NoFix, watchFixes } from "../../location/fixes.ts";
import type { Point } from "../../location/points.ts";
import type { Run, Watch } from "../../pace/run.ts";
import { recall } from "../../store/little.ts";
import { here, logbookId, openDb, type Place } from "../../store/place.ts";
import type { Stopwatch } from "../watch/stopwatch.ts";
import { finish, keep, type Kept, keptOf, merged, tidy } from "./kept.ts";

/** The rider's choice, kept on this phone. */
export const TRACED = "watch_trace";
const ROW_HOLDS = 60;

export interface Tracing {
  fixes: number;
  accuracy_m: number;
  trouble: NoFix | null;
}

/** What the running screen says of it; null when nothing is recorded. */
export const tracing = signal<Tracing | null>(null);

type Owner = Omit<Kept, "points">;

/** The points of one run in one life of the page. */
class Recording {
  #place: Place;
  #owner: Promise<Owner>;
  #life = Date.now();
  #points: Point[] = [];
  #safe = 0;
  /** Settles when all points so far are on the disk. */
  written: Promise<void> = Promise.resolve();
  stop: () => void;

  constructor(place: Place, owner: Promise<Owner>, counts: () => boolean, locator?: Locator) {
    this.#place = place;
    this.#owner = owner;
    tracing.value = { fixes: 0, accuracy_m: 0, trouble: null };
    const unwatch = watchFixes((fix) => counts() && this.#add(fix), (trouble) => void (tracing.value = { fixes: this.#points.length, accuracy_m: 0, trouble }), locator);
    this.stop = () => {
      unwatch();
      tracing.value = null;
    };
  }

  #add(fix: Fix): void {
    const last = this.#points.at(-1);
    if (last && fix.at_ms <= last.at_ms!) return;
    this.#points.push(last ? fix : { ...fix, breaks: true }); // before the first there may have been another life
    tracing.value = { fixes: this.#points.length, accuracy_m: fix.accuracy_m, trouble: null };
    this.written = this.written.then(() => this.#write()).catch((error) => console.error("points of a trace could not be kept", error));
  }

  // the newest row is written anew with each point; points that came meanwhile are written at once
  async #write(): Promise<void> {
    const [owner, count] = [await this.#owner, this.#points.length];
    if (this.#safe === count) return;
    for (let row = Math.floor(this.#safe / ROW_HOLDS); row * ROW_HOLDS < count; row++) {
      await keep(this.#place, { ...owner, points: this.#points.slice(row * ROW_HOLDS, (row + 1) * ROW_HOLDS) }, this.#life, row);
    }
    this.#safe = count;
  }
}

/** Follows one stopwatch for as long as the page lives. */
export class Recorder {
  #stopwatch: Stopwatch;
  #locator: Locator | undefined;
  #run: Run | null = null;
  #recording: Recording | null = null;
  /** The canter saved last, in case its stop was a slip. */
  #saved: { run: Run; kept: Kept[] } | null = null;
  #tidied: string | null = null;
  /** Settles when all that is under way is done. */
  done: Promise<unknown> = Promise.resolve();

  constructor(stopwatch: Stopwatch, locator?: Locator) {
    this.#stopwatch = stopwatch;
    this.#locator = locator;
    effect(() => {
      const [watch, saved_id] = [stopwatch.watch.value, stopwatch.saved_id.value];
      if (openDb.value !== null && logbookId.value !== null) untracked(() => this.#follow(watch, saved_id));
    });
  }

  #follow(watch: Watch, saved_id: string | null): void {
    if (this.#tidied !== logbookId.value) {
      this.#tidied = logbookId.value;
      const place = here();
      this.#then(() => tidy(place));
    }
    if (watch.phase === "running") {
      if (this.#run?.id !== watch.run.id) this.#begin(watch.run);
      return;
    }
    this.#end();
    if (watch.phase === "stopped" && saved_id === watch.run.id && this.#saved?.run.id !== saved_id) this.#finish(watch.run);
  }

  #begin(run: Run): void {
    this.#end();
    this.#run = run;
    const slip = this.#saved !== null && this.#saved.run.trace.first.wall_ms === run.trace.first.wall_ms ? this.#saved.kept : [];
    const place = here();
    if (recall<boolean>(TRACED) === true) return this.#record(place, run, slip);
    // switched off meanwhile, or on another page: what was begun is gone on with
    this.#then(async () => {
      if ((slip.length > 0 || (await keptOf(place, run.id)).length > 0) && this.#run === run) this.#record(place, run, slip);
    });
  }

  #record(place: Place, run: Run, slip: Kept[]): void {
    const counts = (): boolean => (this.#stopwatch.elapsed()?.elapsed_ms ?? -1) >= 0; // not during a countdown
    this.#recording = new Recording(place, ownerOf(place, run, slip), counts, this.#locator);
  }

  #end(): void {
    this.#recording?.stop();
    this.#run = null;
  }

  #finish(run: Run): void {
    const [place, recording] = [here(), this.#recording];
    this.#recording = null;
    this.#saved = { run, kept: [] };
    this.#then(async () => {
      await recording?.written;
      this.#saved = { run, kept: await finish(place, run.id) };
    });
  }

  #then(work: () => Promise<unknown>): void {
    this.done = this.done.then(work).catch((error) => console.error("a trace could not be kept", error));
  }
}

/** Whose the points are. What a run had before its stop by mistake goes under its new id. */
async function ownerOf(place: Place, run: Run, slip: Kept[]): Promise<Owner> {
  const known = (await keptOf(place, run.id))[0] ?? slip[0];
  const owner = { run_id: run.id, trace_id: known?.trace_id ?? uuid7(), outing_id: run.plan.outing_id, logbook_id: place.logbook_id };
  if (slip.length > 0) await keep(place, { ...owner, points: merged(slip) }, 0, 0);
  return owner;
}
