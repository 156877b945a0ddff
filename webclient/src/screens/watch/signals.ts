// Sound and vibration at a cue, where this phone has them. The flash on the screen is always there; these
// are extras, and their absence is no error.

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

/** One low tone for a minute, two high ones for the target. */
export function soundCue(kind: "target" | "minute"): void {
  if (audio === null || audio.state !== "running") return;
  const now = audio.currentTime;
  tone(audio, kind === "target" ? 1320 : 880, now, 0.25);
  if (kind === "target") tone(audio, 1320, now + 0.35, 0.35);
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
