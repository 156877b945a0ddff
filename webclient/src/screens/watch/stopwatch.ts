// The stopwatch of this page: takes taps and beats, moves the pure state (pace/run.ts) and keeps it on the
// disk. It lives outside any screen, so that a run goes on while attempts are tapped elsewhere.

import { signal } from "@preact/signals";

import { uuid7 } from "../../entries/uuid7.ts";
import { type Cue, cuesBetween } from "../../pace/cues.ts";
import type { Judged } from "../../pace/judge.ts";
import { secondsFor } from "../../pace/markers.ts";
import { settleReading } from "../../pace/plausible.ts";
import { canterBody, elapsedAt, type Plan, pressSplit, pressStart, pressStop, READY, resume, type Run, seen, tick, timeOf, type Watch } from "../../pace/run.ts";
import type { Sample } from "../../pace/trace.ts";
import { save, takeBack } from "../../store/book.ts";
import { here } from "../../store/place.ts";
import type { Device } from "./device.ts";
import { heldRun, type KeptRun, keepAgain, keepSeen, keepStart, keepStopped, letGo } from "./keep.ts";
import { moveTies } from "./ties.ts";
import { STALE_CUE_MS, Vigil } from "./vigil.ts";

/** Milliseconds at which a horse on the target passes the second flag; null without a target. */
export function targetMs(plan: Plan): number | null {
  return plan.target_speed_mpm === null ? null : 1000 * secondsFor(plan.distance_m, plan.target_speed_mpm);
}

export class Stopwatch {
  watch = signal<Watch>(READY);
  cue = signal<Cue | null>(null);
  /** The record of the canter, once it is on the disk. */
  saved_id = signal<string | null>(null);
  #device: Device;
  #vigil: Vigil;
  #cuedTo_ms = 0;
  #leaving = false;

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

  get run(): Run | null {
    return this.watch.value.phase === "running" ? this.watch.value.run : null;
  }

  /** The running time at this moment; null when nothing runs. */
  elapsed(): Judged | null {
    return this.run === null ? null : elapsedAt(this.run, this.#device.now());
  }

  async start(plan: Plan, timeStamp: number): Promise<void> {
    const next = pressStart(this.watch.value, uuid7(), plan, this.#device.at(timeStamp));
    if (next === this.watch.value || next.phase !== "running") return;
    this.saved_id.value = null;
    this.#device.touched();
    this.#goOn(next.run);
    await this.#vigil.writing(async () => {
      const kept = await keepStart(here(), next.run);
      if (kept.id !== next.run.id) this.#goOn(seen(kept, this.#device.now()));
    });
  }

  async split(timeStamp: number): Promise<void> {
    const before = this.watch.value;
    this.watch.value = pressSplit(before, this.#device.at(timeStamp));
    if (this.run === null || this.watch.value === before) return;
    this.#device.touched();
    await this.#keepSeen(this.run, true);
  }

  async stop(timeStamp: number): Promise<void> {
    const before = this.watch.value;
    const after = pressStop(before, this.#device.at(timeStamp));
    if (after === before || this.#leaving) return;
    this.#device.touched();
    if (after.phase === "ready" && before.phase === "running") return this.#leave(before.run); // called off before its zero
    this.watch.value = after;
    if (after.phase === "short") return;
    this.#rest();
    await this.saveAgain();
  }

  /** Saves the stopped run as a timed canter, under the run's own id: doing it twice makes one record. */
  async saveAgain(): Promise<void> {
    if (this.watch.value.phase !== "stopped") return;
    const { run } = this.watch.value;
    const body = canterBody(run, settleReading(timeOf(run), run.plan.distance_m).chosen);
    await this.#vigil.writing(async () => {
      const stopped = keepStopped(here(), run);
      if (body !== null) await save("timed_canter", body, run.id);
      await stopped;
      if (body === null) return;
      await letGo(here(), run.id);
      this.saved_id.value = run.id;
    });
  }

  /** The stop was a slip. What was saved is taken back; the run goes on under an id of its own. */
  async keepRunning(): Promise<void> {
    const next = resume(this.watch.value);
    if (next === this.watch.value || next.phase !== "running") return;
    const saved = this.saved_id.value;
    const run = saved === null ? next.run : { ...next.run, id: uuid7() };
    this.saved_id.value = null;
    this.#goOn(seen(run, this.#device.now()));
    await this.#vigil.writing(() => keepAgain(here(), run));
    if (saved === null) return;
    await takeBack(saved);
    await moveTies(run.plan.outing_id, saved, run.id);
  }

  /** Ends the run unsaved and hands it back, for the undo. */
  async throwAway(): Promise<Run | null> {
    if (this.watch.value.phase === "ready" || this.#leaving) return null;
    const { run } = this.watch.value;
    await this.#leave(run);
    return run;
  }

  async bringBack(run: Run): Promise<void> {
    if (this.watch.value.phase !== "ready") return;
    this.#goOn(seen(run, this.#device.now()));
    await this.#vigil.writing(() => keepAgain(here(), run));
  }

  /** Done with the last canter: ready for the next. */
  ready(): void {
    if (this.watch.value.phase !== "stopped" || this.saved_id.value === null) return;
    this.watch.value = READY;
    this.saved_id.value = null;
  }

  /** Finds a run that an earlier life of the page, or another tab, has left on the disk. */
  async takeUp(): Promise<void> {
    if (this.watch.value.phase !== "ready") return;
    const held = await heldRun(here());
    if (held !== null && this.watch.value.phase === "ready") await this.#takeUpHeld(held);
  }

  /** Shows and sounds what fell due since the last look; called by beats and by the running face. */
  lookForCues(): void {
    const judged = this.elapsed();
    if (judged === null || this.run === null) return;
    const newest = cuesBetween(this.#cuedTo_ms, judged.elapsed_ms, targetMs(this.run.plan)).at(-1);
    this.#cuedTo_ms = Math.max(this.#cuedTo_ms, judged.elapsed_ms);
    if (newest === undefined || judged.elapsed_ms - newest.at_ms > STALE_CUE_MS) return;
    this.cue.value = newest;
    this.#device.signal(newest);
  }

  // Gone from the screen once it is gone from the disk: a page closed in between would find it running again. A disk
  // that refuses keeps nobody at a run.
  async #leave(run: Run): Promise<void> {
    this.#leaving = true;
    await letGo(here(), run.id).catch((error) => console.error("a run could not be let go", error));
    this.#leaving = false;
    this.#rest();
    this.watch.value = READY;
  }

  async #takeUpHeld(held: KeptRun): Promise<void> {
    if (!held.stopped) {
      this.#goOn(seen(held.run, this.#device.now()));
      await this.#keepSeen(this.run as Run, true);
      return;
    }
    this.watch.value = { phase: "stopped", run: held.run };
    await this.saveAgain();
  }

  #goOn(run: Run): void {
    this.cue.value = null;
    this.watch.value = { phase: "running", run };
    this.#cuedTo_ms = timeOf(run).elapsed_ms;
    this.#vigil.begin((sample, parting) => this.#onBeat(sample, parting));
  }

  #rest(): void {
    this.#vigil.rest();
    this.cue.value = null;
  }

  #onBeat(sample: Sample, parting: boolean): void {
    const before = this.run;
    if (before === null) return;
    this.watch.value = tick(this.watch.value, sample);
    const run = this.run as Run;
    if (parting || this.#vigil.due(before.trace, run.trace)) void this.#keepSeen(run, sample.visible);
    if (parting && sample.visible) void this.#lookElsewhere();
    this.lookForCues();
  }

  // Shown again: another tab may have stopped this run, or thrown it away, in the meantime.
  async #lookElsewhere(): Promise<void> {
    const mine = this.run?.id;
    if (mine === undefined || this.keeping.value !== "kept") return;
    const held = await heldRun(here()).catch(() => undefined);
    if (held === undefined || this.run?.id !== mine || (held?.id === mine && !held.stopped)) return;
    this.#rest();
    this.watch.value = READY;
  }

  #keepSeen(run: Run, visible: boolean): Promise<void> {
    return this.#vigil.keepSeen(run.trace, keepSeen(here(), run, visible));
  }
}
