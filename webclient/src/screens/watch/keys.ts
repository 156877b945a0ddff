// Keyboards and Bluetooth clickers: Space and Enter start and stop, S marks a flag. A key held down counts
// once; a key meant for a field, a link or another button is left alone.

export type WatchKey = "start_stop" | "split";

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
  return Object.hasOwn(KEYS, press.key) ? (KEYS[press.key] as WatchKey) : null;
}

/** Whether the key belongs to what has the focus: something to type in, or a control of its own. */
export function belongsElsewhere(target: { closest: (selector: string) => unknown } | null): boolean {
  if (target === null) return false;
  if (target.closest("[data-watch]") !== null) return false;
  return target.closest("input, textarea, select, button, a, summary, [role=radio], [contenteditable]") !== null;
}
