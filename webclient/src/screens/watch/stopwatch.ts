// The stopwatch of this page: takes taps and beats, moves the pure state (pace/run.ts) and keeps it on the
// disk. It lives outside any screen, so that a run goes on while attempts are tapped elsewhere.

import { signal } from "@preact/signals";

import { uuid7 } from "../../entries/uuid7.ts";
import { type Cue, cuesBetween } from "../../pace/cues.ts";
import { judge, type Judged } from "../../pace/judge.ts";
import { secondsFor } from "../../pace/markers.ts";
import { settleReading } from "../../pace/plausible.ts";
import { canterBody, elapsedAt, type Plan, pressSplit, pressStart, pressStop, READY, resume, type Run, seen, tick, type Watch } from "../../pace/run.ts";
import type { Sample } from "../../pace/trace.ts";
import { save, takeBack } from "../../store/book.ts";
import { here } from "../../store/place.ts";
import type { Device } from "./device.ts";
import { heldRun, type KeptRun, keepAgain, keepSeen, keepStart, keepStopped, letGo } from "./keep.ts";
import type { KeepAwake, Wakefulness } from "./wakeLock.ts";

/** writing: on its way to the disk. kept: there. unsaved: the disk refused, and the screen must say so. */
export type Keeping = "writing" | "kept" | "unsaved";

const KEEP_EVERY_MS = 5000;
/** A cue found later than this, after a hidden page, is old news and is not sounded. */
const STALE_CUE_MS = 1500;

/** Milliseconds at which a horse on the target passes the second flag; null without a target. */
export function targetMs(plan: Plan): number | null {
  return plan.target_speed_mpm === null ? null : 1000 * secondsFor(plan.distance_m, plan.target_speed_mpm);
}

export class Stopwatch {
  watch = signal<Watch>(READY);
  keeping = signal<Keeping>("kept");
  wakefulness = signal<Wakefulness>("off");
  cue = signal<Cue | null>(null);
  /** The record of the canter, once it is on the disk. */
  saved_id = signal<string | null>(null);
  #device: Device;
  #stopBeating: (() => void) | null = null;
  #awake: KeepAwake | null = null;
  #keptAt_ms = 0;
  #cuedTo_ms = 0;

  constructor(device: Device) {
    this.#device = device;
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
    await this.#writing(async () => {
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
    this.watch.value = pressStop(before, this.#device.at(timeStamp));
    if (this.watch.value === before) return;
    this.#device.touched();
    if (this.watch.value.phase !== "stopped") return;
    this.#rest();
    await this.saveAgain();
  }

  /** Saves the stopped run as a timed canter, under the run's own id: doing it twice makes one record. */
  async saveAgain(): Promise<void> {
    if (this.watch.value.phase !== "stopped") return;
    const { run } = this.watch.value;
    const body = canterBody(run, settleReading(judge(run.trace), run.plan.distance_m).chosen);
    await this.#writing(async () => {
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
    await this.#writing(() => keepAgain(here(), run));
    if (saved !== null) await takeBack(saved);
  }

  /** Ends the run unsaved and hands it back, for the undo. */
  async throwAway(): Promise<Run | null> {
    if (this.watch.value.phase === "ready") return null;
    const { run } = this.watch.value;
    this.#rest();
    this.watch.value = READY;
    await letGo(here(), run.id);
    return run;
  }

  async bringBack(run: Run): Promise<void> {
    if (this.watch.value.phase !== "ready") return;
    this.#goOn(seen(run, this.#device.now()));
    await this.#writing(() => keepAgain(here(), run));
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
    this.#rest();
    this.watch.value = { phase: "running", run };
    this.#cuedTo_ms = judge(run.trace).elapsed_ms;
    this.#stopBeating = this.#device.beat((sample, parting) => this.#onBeat(sample, parting));
    this.#awake = this.#device.keepAwake((state) => void (this.wakefulness.value = state));
  }

  #rest(): void {
    this.#stopBeating?.();
    this.#stopBeating = null;
    this.#awake?.release();
    this.#awake = null;
    this.cue.value = null;
  }

  #onBeat(sample: Sample, parting: boolean): void {
    const before = this.run;
    if (before === null) return;
    this.watch.value = tick(this.watch.value, sample);
    const run = this.run as Run;
    const turned = run.trace.stretches.length !== before.trace.stretches.length;
    const due = Math.abs(sample.monotonic_ms - this.#keptAt_ms) >= KEEP_EVERY_MS;
    if (parting || turned || due) void this.#keepSeen(run, sample.visible);
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

  async #keepSeen(run: Run, visible: boolean): Promise<void> {
    this.#keptAt_ms = run.trace.last.monotonic_ms;
    await keepSeen(here(), run, visible).catch((error) => console.error("a run could not be kept", error));
  }

  async #writing(work: () => Promise<void>): Promise<void> {
    this.keeping.value = "writing";
    try {
      await work();
      this.keeping.value = "kept";
    } catch (error) {
      console.error("the stopwatch could not write", error);
      this.keeping.value = "unsaved";
    }
  }
}
