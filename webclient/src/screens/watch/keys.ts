// Keyboards and Bluetooth clickers: Space and Enter start and stop, S or a digit marks a flag; where choices are
// shown a digit takes that one. A key held down counts once; a key meant for a field, a link or another button
// is left alone.

/** A digit stands for itself: what it means is up to the screen. */
export type WatchKey = "start_stop" | "split" | number;

export interface KeyPress {
  key: string;
  repeat: boolean;
  ctrlKey: boolean;
  altKey: boolean;
  metaKey: boolean;
}

const KEYS: Record<string, WatchKey> = { " ": "start_stop", Enter: "start_stop", s: "split", S: "split" };

/** What a key asks of the stopwatch; null for every other key and for shortcuts of the browser. */
export function watchKey(press: KeyPress): WatchKey | null {
  if (press.repeat || press.ctrlKey || press.altKey || press.metaKey) return null;
  if (/^[1-9]$/.test(press.key)) return Number(press.key);
  return Object.hasOwn(KEYS, press.key) ? (KEYS[press.key] as WatchKey) : null;
}

/** Whether the key belongs to what has the focus: something to type in, or a control of its own. */
export function belongsElsewhere(target: { closest: (selector: string) => unknown } | null): boolean {
  if (target === null) return false;
  if (target.closest("[data-watch]") !== null) return false;
  return target.closest("input, textarea, select, button, a, summary, [role=radio], [contenteditable]") !== null;
}

// Some clickers say again and again that a key is down, and do not say that it is the same press.
const HELD_MS = 700;

/** Which keys are held: `fresh` says whether a key going down is a new press. One press may be asked about twice. */
export class HeldKeys {
  #down = new Map<string, { first: number; last: number }>();

  fresh(key: string, timeStamp: number): boolean {
    const held = this.#down.get(key);
    const same = held !== undefined && timeStamp - held.last < HELD_MS;
    const first = same ? held.first : timeStamp;
    this.#down.set(key, { first, last: timeStamp });
    return first === timeStamp;
  }

  up(key: string): void {
    this.#down.delete(key);
  }
}
