// The keys of the stopwatch, while one of its screens is open.

import { signal } from "@preact/signals";
import { useEffect, useRef } from "preact/hooks";

import { belongsElsewhere, HeldKeys, type WatchKey, watchKey } from "./keys.ts";

const inBrowser = typeof document !== "undefined";
const held = new HeldKeys();

/** Whether there seem to be keys to press: a mouse says so, and so does the first key. No browser tells. */
export const hasKeys = signal(inBrowser && matchMedia("(any-hover: hover) and (any-pointer: fine)").matches);

if (inBrowser) {
  document.addEventListener("keyup", (event) => held.up(event.key));
}

/** Calls `onKey` with the moment of the key; the page then does nothing else with it. */
export function useWatchKeys(onKey: (key: WatchKey, timeStamp: number) => void): void {
  const newest = useRef(onKey);
  newest.current = onKey;
  useEffect(() => {
    const pressed = (event: KeyboardEvent): void => {
      const key = watchKey(event);
      if (key === null || belongsElsewhere(event.target as Element | null)) return;
      event.preventDefault();
      if (!held.fresh(event.key, event.timeStamp)) return;
      hasKeys.value = true;
      newest.current(key, event.timeStamp);
    };
    // a button that has the focus would be clicked when Space comes up: the key was used already
    const released = (event: KeyboardEvent): void => {
      if (watchKey(event) !== null && (event.target as Element | null)?.closest("[data-watch]")) event.preventDefault();
    };
    document.addEventListener("keydown", pressed);
    document.addEventListener("keyup", released);
    return () => {
      document.removeEventListener("keydown", pressed);
      document.removeEventListener("keyup", released);
    };
  }, []);
}
