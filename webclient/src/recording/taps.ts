// Taps on their way into the store. A tap shows at once; its tick waits for the store; one that could not
// be kept stays on the screen and can be tried again.

import type { Attempt } from "../entries/bodies.ts";
import type { Made } from "./made.ts";

export type TapState = "saving" | "saved" | "not_saved";

export interface Tap extends Made<Attempt> {
  state: TapState;
}

/** An attempt as the person sees it: kept, or on its way with its state. */
export type Seen<R> = R | Tap;

export function addTap(taps: readonly Tap[], record_id: string, body: Attempt, at: Date): Tap[] {
  return [...taps, { record_id, body, recorded_at: at.toISOString(), state: "saving" }];
}

export function markTap(taps: readonly Tap[], record_id: string, state: TapState): Tap[] {
  return taps.map((tap) => (tap.record_id === record_id ? { ...tap, state } : tap));
}

export function dropTap(taps: readonly Tap[], record_id: string): Tap[] {
  return taps.filter((tap) => tap.record_id !== record_id);
}

/** The outing's attempts as the person sees them: those kept, and those tapped but not yet read back. What
 * was taken back while the store was still busy is hidden by `hidden`. */
export function withTaps<R extends Made<Attempt>>(
  kept: readonly R[], taps: readonly Tap[], outing_id: string, hidden: ReadonlySet<string> = new Set(),
): Seen<R>[] {
  const known = new Set(kept.map((record) => record.record_id));
  const coming = taps.filter((tap) => tap.body.outing_id === outing_id && !known.has(tap.record_id));
  return [...kept, ...coming].filter((record) => !hidden.has(record.record_id));
}

/** Taps that the store's own list now shows need no place here. */
export function withoutKept(taps: readonly Tap[], kept: ReadonlySet<string>): Tap[] {
  return taps.filter((tap) => tap.state !== "saved" || !kept.has(tap.record_id));
}

/** Taps read back after the page was gone: whether they reached the store is not known yet. */
export function recovered(stored: unknown): Tap[] {
  if (!Array.isArray(stored)) return [];
  const whole = (stored as Tap[]).filter((tap) => typeof tap?.record_id === "string" && typeof tap.body?.outcome === "string");
  return whole.map((tap) => ({ ...tap, state: "not_saved" }));
}
