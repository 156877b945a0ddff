// Sound and vibration at a cue, where this phone has them. The flash on the screen is always there; these
// are extras, and their absence is no error.

import type { CueKind } from "../../pace/cues.ts";

let audio: AudioContext | null = null;

/** Must be called in a tap: phones give no sound to a page that nobody has touched. */
export function wakeSound(): void {
  if (typeof AudioContext === "undefined") return;
  try {
    audio ??= new AudioContext();
    audio.resume().catch(() => undefined);
  } catch {
    audio = null; // a phone out of audio channels: the flash remains
  }
}

function tone(context: AudioContext, frequency_hz: number, at_s: number, length_s: number): void {
  const [oscillator, volume] = [context.createOscillator(), context.createGain()];
  oscillator.frequency.value = frequency_hz;
  volume.gain.setValueAtTime(0.5, at_s);
  volume.gain.exponentialRampToValueAtTime(0.001, at_s + length_s);
  oscillator.connect(volume).connect(context.destination);
  oscillator.start(at_s);
  oscillator.stop(at_s + length_s);
}

// Frequency in Hz, start and length in s: short low ones count down to a long high one; one for a minute, two
// high ones for the target.
const TONES: Record<CueKind, [number, number, number][]> = {
  count: [[660, 0, 0.12]], go: [[1320, 0, 0.7]], minute: [[880, 0, 0.25]], target: [[1320, 0, 0.25], [1320, 0.35, 0.35]],
};

export function soundCue(kind: CueKind): void {
  if (audio === null || audio.state !== "running") return;
  for (const [frequency_hz, at_s, length_s] of TONES[kind]) tone(audio, frequency_hz, audio.currentTime + at_s, length_s);
}

export function buzz(pattern: number | number[]): void {
  if (typeof navigator === "undefined" || typeof navigator.vibrate !== "function") return;
  navigator.vibrate(pattern);
}

/** What this phone can do, for the help page. */
export function canDo(): { sound: boolean; vibration: boolean; wake_lock: boolean } {
  return {
    sound: typeof AudioContext !== "undefined",
    vibration: typeof navigator !== "undefined" && typeof navigator.vibrate === "function",
    wake_lock: typeof navigator !== "undefined" && "wakeLock" in navigator,
  };
}
