// A canter as a strip along its time: where the flags and the fences fall, and the speed of each leg.

import type { Leg } from "./legs.ts";

export const STRIP_WIDTH = 320;
export const STRIP_HEIGHT = 74;
const EDGE = 10;
/** Numbers closer than this stand in two rows. */
const CROWDED = 16;

export interface Strip {
  /** One a fence, in the order given: where it stands, and in which row its number. */
  fences: { x: number; row: number }[];
  flags: number[];
  legs: { x: number; mpm: number }[];
}

export function stripOf(elapsed_ms: number, fences_ms: readonly number[], splits_ms: readonly number[], legs: readonly Leg[]): Strip {
  const x = (ms: number): number => EDGE + ((STRIP_WIDTH - 2 * EDGE) * Math.min(Math.max(0, ms), elapsed_ms)) / elapsed_ms;
  const fences: Strip["fences"] = [];
  for (const at of fences_ms.map(x)) {
    const before = fences.at(-1);
    fences.push({ x: at, row: before && at - before.x < CROWDED ? 1 - before.row : 0 });
  }
  const middle = ({ from_ms, to_ms }: Leg): number => x((from_ms + to_ms) / 2);
  return { fences, flags: splits_ms.map(x), legs: legs.map((leg) => ({ x: middle(leg), mpm: leg.pace.speed_mpm })) };
}
