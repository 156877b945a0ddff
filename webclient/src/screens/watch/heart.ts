// The heartbeat of a run: a paired sample of both clocks twice a second, and at each moment at which a phone
// tells its page that it comes or goes. The samples carry the evidence for which clock to believe; the time
// itself never depends on them arriving.

import { type Clocks, deviceClocks, readAt, readNow } from "../../pace/reading.ts";
import type { Sample } from "../../pace/trace.ts";

export const BEAT_MS = 500;

/** This page's life: the monotonic clock of another life cannot be compared with it. */
const PAGE_ID: string = crypto.randomUUID();

const MOMENTS: [EventTarget, string][] =
  typeof document === "undefined"
    ? []
    : [
        [document, "visibilitychange"],
        [document, "freeze"],
        [document, "resume"],
        [window, "pagehide"],
        [window, "pageshow"],
        [window, "focus"],
      ];

const isVisible = (): boolean => document.visibilityState === "visible";

export function sampleNow(clocks: Clocks = deviceClocks): Sample {
  return { ...readNow(clocks), page_id: PAGE_ID, visible: isVisible() };
}

/** The sample of a tap or key, at the moment it happened. */
export function sampleAt(timeStamp: number, clocks: Clocks = deviceClocks): Sample {
  return { ...readAt(timeStamp, clocks), page_id: PAGE_ID, visible: isVisible() };
}

export function sampledHere(sample: Sample): boolean {
  return sample.page_id === PAGE_ID;
}

/** Calls `onBeat` twice a second and at every coming and going, until the returned function is called. */
export function beat(onBeat: (sample: Sample, parting: boolean) => void): () => void {
  const timer = setInterval(() => onBeat(sampleNow(), false), BEAT_MS);
  const parting = (): void => onBeat(sampleNow(), true);
  for (const [target, name] of MOMENTS) target.addEventListener(name, parting);
  return () => {
    clearInterval(timer);
    for (const [target, name] of MOMENTS) target.removeEventListener(name, parting);
  };
}
