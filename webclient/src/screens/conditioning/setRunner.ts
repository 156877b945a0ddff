// The interval set of this page: takes taps and beats, moves the pure state (conditioning/set.ts) and keeps it
// on the disk. It lives outside any screen, so that cues come while attempts are tapped elsewhere.

import { signal } from "@preact/signals";

import { cueBetween, type SetCue } from "../../conditioning/cues.ts";
import {
  beginSet, elapsedOf, pressEnd, pressLonger, pressOn, ridden, seenSet, type SetPlan, type SetRun, undoChange,
} from "../../conditioning/set.ts";
import type { IntervalSet } from "../../entries/bodies.ts";
import { uuid7 } from "../../entries/uuid7.ts";
import { type Judged, judge } from "../../pace/judge.ts";
import type { Sample } from "../../pace/trace.ts";
import { edit, save, takeBack } from "../../store/book.ts";
import { here, logbookId } from "../../store/place.ts";
import { findRecord } from "../../store/read.ts";
import type { Device } from "../watch/device.ts";
import { STALE_CUE_MS, Vigil } from "../watch/vigil.ts";
import { heldSet, keepSet, keepSetSeen, keepSetStart, letSetGo } from "./keepSet.ts";

/** So long after the work nobody takes a rate any more. */
const FORGET_MS = 3_600_000;

type Change = (run: SetRun, sample: Sample) => SetRun;

/** Rates and a note that the record has by now stay. */
async function keepRidden(record_id: string, part: Pick<IntervalSet, "outing_id" | "intervals">): Promise<void> {
  const body = (await findRecord(here(), record_id))?.body as IntervalSet | null | undefined;
  await (body ? edit({ record_id, kind: "interval_set", body }, part) : save("interval_set", part, record_id));
}

export class SetRunner {
  run = signal<SetRun | null>(null);
  cue = signal<SetCue | null>(null);
  #device: Device;
  #vigil: Vigil;
  #logbook: string | null = null;
  #cuedTo_ms = 0;

  constructor(device: Device) {
    this.#device = device;
    this.#vigil = new Vigil(device);
  }

  get keeping() {
    return this.#vigil.keeping;
  }

  get wakefulness() {
    return this.#vigil.wakefulness;
  }

  /** The set's time at this moment; null when nothing runs. */
  elapsed(): Judged | null {
    return this.run.value === null ? null : elapsedOf(this.run.value, this.#device.now());
  }

  /** The page's own sample, for what is shown at this moment. */
  sample(): Sample {
    return this.#device.now();
  }

  async start(plan: SetPlan, timeStamp: number): Promise<void> {
    if (this.run.value !== null && this.run.value.ended_ms === null) return;
    this.#device.touched();
    const run = beginSet(uuid7(), plan, this.#device.at(timeStamp));
    this.#goOn(run);
    await this.#vigil.writing(async () => {
      const kept = await keepSetStart(here(), run);
      if (kept.id !== run.id) this.#goOn(seenSet(kept, this.#device.now()));
    });
  }

  on = (timeStamp: number) => this.#tap(pressOn, timeStamp);
  end = (timeStamp: number) => this.#tap(pressEnd, timeStamp);
  longer = (timeStamp: number, by_ms: number) => this.#tap((run, sample) => pressLonger(run, sample, by_ms), timeStamp);

  /** The last tap was a slip. What it saved is taken back, and saved again when the set ends. */
  async undo(before: SetRun): Promise<void> {
    const run = this.run.value;
    if (run === null || run.id !== before.id) return;
    this.#goOn(undoChange({ ...run, saved_changes: null }, before));
    await this.#keep();
    if (run.saved_changes !== null) await takeBack(run.id);
  }

  /** A set that was let go, on the clock it had. */
  async bringBack(run: SetRun): Promise<void> {
    if (this.run.value !== null) return;
    this.#goOn(seenSet(run, this.#device.now()));
    await this.#keep();
  }

  /** The rates are taken, or are no longer of use: the clock may stop. It is shown as stopped once the disk has let
   * go of it: a page closed in between would find it running again. A disk that refuses keeps nobody here. */
  async letGo(): Promise<void> {
    await letSetGo(here()).catch((error) => console.error("a set could not be let go", error));
    this.#rest();
    this.run.value = null;
  }

  /** Finds a set that an earlier life of the page, or another tab, has left on the disk. */
  async takeUp(): Promise<void> {
    this.#leaveOtherLogbook();
    const held = await heldSet(here());
    const mine = this.run.value;
    if (held === null || (mine !== null && mine.id === held.id && mine.changes >= held.changes)) return;
    const run = seenSet(held, this.#device.now());
    if (run.ended_ms !== null && judge(run.trace).elapsed_ms - run.ended_ms > FORGET_MS) return this.#forget(run);
    this.#goOn(run);
    await this.#keep();
  }

  /** Shows and sounds what fell due since the last look; called by beats and by the running face. */
  lookForCues(): void {
    const [run, judged] = [this.run.value, this.elapsed()];
    if (run === null || judged === null) return;
    const newest = cueBetween(run.segments, this.#cuedTo_ms, judged.elapsed_ms);
    this.#cuedTo_ms = Math.max(this.#cuedTo_ms, judged.elapsed_ms);
    if (newest === null || judged.elapsed_ms - newest.at_ms > STALE_CUE_MS) return;
    this.cue.value = newest;
    this.#device.signal({ kind: newest.kind === "canter" || newest.kind === "check" ? "target" : "minute", at_ms: newest.at_ms });
  }

  /** Saves the ridden set as soon as the work is over, under the set's own id, so that doing it twice makes
   * one record; rates added to it since are kept. */
  async saveIfOver(): Promise<void> {
    const run = this.run.value;
    if (run === null || run.ended_ms === null || run.saved_changes === run.changes) return;
    const intervals = ridden(run.segments, run.plan.speed_mpm);
    if (intervals.length === 0) return this.letGo();
    await this.#vigil.writing(async () => {
      await keepRidden(run.id, { outing_id: run.plan.outing_id, intervals });
      this.run.value = { ...(this.run.value ?? run), saved_changes: run.changes };
      await keepSet(here(), this.run.value);
    });
  }

  async #forget(run: SetRun): Promise<void> {
    this.run.value = run;
    await this.saveIfOver();
    if (this.keeping.value === "kept") await this.letGo();
  }

  async #tap(how: Change, timeStamp: number): Promise<SetRun | null> {
    const before = this.run.value;
    if (before === null) return null;
    const after = how(before, this.#device.at(timeStamp));
    if (after.changes === before.changes) return null;
    this.#device.touched();
    this.run.value = after;
    this.#cuedTo_ms = judge(after.trace).elapsed_ms;
    this.cue.value = null;
    await this.#keep();
    return before;
  }

  async #keep(): Promise<void> {
    await this.#vigil.writing(async () => {
      if (this.run.value !== null) await keepSet(here(), this.run.value);
    });
    await this.saveIfOver();
  }

  // A set stays with its logbook: there it waits on the disk until that one is opened again.
  #leaveOtherLogbook(): void {
    if (this.run.value === null || this.#logbook === logbookId.value) return;
    this.#rest();
    this.run.value = null;
  }

  #goOn(run: SetRun): void {
    this.cue.value = null;
    this.#logbook = logbookId.value;
    this.run.value = run;
    this.#cuedTo_ms = judge(run.trace).elapsed_ms;
    this.#vigil.begin((sample, parting) => this.#onBeat(sample, parting));
  }

  #rest(): void {
    this.#vigil.rest();
    this.cue.value = null;
  }

  #onBeat(sample: Sample, parting: boolean): void {
    const before = this.run.value;
    if (before === null || this.#logbook !== logbookId.value) return;
    const run = seenSet(before, sample);
    this.run.value = run;
    if (run.ended_ms !== before.ended_ms) void this.#keep();
    else if (parting || this.#vigil.due(before.trace, run.trace)) void this.#vigil.keepSeen(run.trace, keepSetSeen(here(), run, sample.visible));
    if (parting && sample.visible) void this.#lookElsewhere();
    this.lookForCues();
  }

  // Shown again: another tab may have gone on with this set, or let it go.
  async #lookElsewhere(): Promise<void> {
    const mine = this.run.value?.id;
    if (mine === undefined || this.keeping.value !== "kept") return;
    const held = await heldSet(here()).catch(() => undefined);
    if (held === undefined || this.run.value?.id !== mine) return;
    if (held?.id === mine) return this.takeUp();
    this.#rest();
    this.run.value = null;
  }
}
