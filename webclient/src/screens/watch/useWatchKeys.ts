// The keys of the stopwatch, while one of its screens is open.

import { useEffect, useRef } from "preact/hooks";

import { belongsElsewhere, type WatchKey, watchKey } from "./keys.ts";

/** Calls `onKey` with the moment of the key; the page then does nothing else with it. */
export function useWatchKeys(onKey: (key: WatchKey, timeStamp: number) => void): void {
  const newest = useRef(onKey);
  newest.current = onKey;
  useEffect(() => {
    const pressed = (event: KeyboardEvent): void => {
      const key = watchKey(event);
      if (key === null || belongsElsewhere(event.target as Element | null)) return;
      event.preventDefault();
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
