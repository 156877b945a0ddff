// What keeps watch over a run of any kind, stopwatch or interval set: the heartbeat, the screen kept on, and the
// writing to the disk with what the screen says of it.

import { signal } from "@preact/signals";

import type { Sample, Trace } from "../../pace/trace.ts";
import type { Device } from "./device.ts";
import type { KeepAwake, Wakefulness } from "./wakeLock.ts";

/** writing: on its way to the disk. kept: there. unsaved: the disk refused, and the screen must say so. */
export type Keeping = "writing" | "kept" | "unsaved";

const KEEP_EVERY_MS = 5000;
/** A cue found later than this, after a hidden page, is old news and is not sounded. */
export const STALE_CUE_MS = 1500;

export class Vigil {
  keeping = signal<Keeping>("kept");
  wakefulness = signal<Wakefulness>("off");
  device: Device;
  #stopBeating: (() => void) | null = null;
  #awake: KeepAwake | null = null;
  #keptAt_ms = 0;

  constructor(device: Device) {
    this.device = device;
  }

  begin(onBeat: (sample: Sample, parting: boolean) => void): void {
    this.rest();
    this.#stopBeating = this.device.beat(onBeat);
    this.#awake = this.device.keepAwake((state) => void (this.wakefulness.value = state));
  }

  rest(): void {
    this.#stopBeating?.();
    this.#stopBeating = null;
    this.#awake?.release();
    this.#awake = null;
  }

  /** Whether what a beat has seen is worth a write: a clock did something, or the last write is some seconds old. */
  due(before: Trace, after: Trace): boolean {
    const turned = before.stretches.length !== after.stretches.length;
    return turned || Math.abs(after.last.monotonic_ms - this.#keptAt_ms) >= KEEP_EVERY_MS;
  }

  /** A write nobody waits for: if it fails, the next one may succeed. */
  async keepSeen(trace: Trace, write: Promise<void>): Promise<void> {
    this.#keptAt_ms = trace.last.monotonic_ms;
    await write.catch((error) => console.error("a run could not be kept", error));
  }

  async writing(work: () => Promise<void>): Promise<void> {
    this.keeping.value = "writing";
    try {
      await work();
      this.keeping.value = "kept";
    } catch (error) {
      console.error("a run could not be written", error);
      this.keeping.value = "unsaved";
    }
  }
}
