// What the stopwatch needs of the phone. Tests bring a pretend one.

import type { Cue, CueKind } from "../../pace/cues.ts";
import type { Sample } from "../../pace/trace.ts";
import { recall } from "../../store/little.ts";
import { beat, sampleAt, sampleNow } from "./heart.ts";
import { buzz, soundCue, wakeSound } from "./signals.ts";
import { type KeepAwake, keepAwake, type Wakefulness } from "./wakeLock.ts";

export interface Device {
  now: () => Sample;
  /** The sample of a tap or key, at the moment it happened. */
  at: (timeStamp: number) => Sample;
  beat: (onBeat: (sample: Sample, parting: boolean) => void) => () => void;
  keepAwake: (onChange: (state: Wakefulness) => void) => KeepAwake;
  /** A tap was taken: the moment in which a phone lets a page make sound later. */
  touched: () => void;
  signal: (cue: Cue) => void;
}

export const QUIET = "watch_quiet";

const BUZZES: Record<CueKind, number | number[]> = { count: 60, go: 500, minute: 200, target: [200, 100, 400] };

function signalCue(cue: Cue): void {
  if (recall<boolean>(QUIET) === true) return;
  soundCue(cue.kind);
  buzz(BUZZES[cue.kind]);
}

function touched(): void {
  buzz(40);
  if (recall<boolean>(QUIET) !== true) wakeSound();
}

export const phone: Device = { now: sampleNow, at: sampleAt, beat, keepAwake: (onChange) => keepAwake(onChange), touched, signal: signalCue };
