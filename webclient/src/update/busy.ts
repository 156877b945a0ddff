// Screens in the middle of something say so here; an update is not offered meanwhile.

import { signal } from "@preact/signals";
import { useEffect } from "preact/hooks";

export const busyScreens = signal(0);

/** Call in a screen that must not be disturbed: an open outing, a running stopwatch, a half-filled form. */
export function useBusy(busy: boolean = true): void {
  useEffect(() => {
    if (!busy) return;
    busyScreens.value += 1;
    return () => void (busyScreens.value -= 1);
  }, [busy]);
}
