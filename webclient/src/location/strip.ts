// Where everything stands in the picture of a trace: speed over time, gaps as gaps. Units of the drawing.

import type { Measured } from "./track.ts";

export const WIDTH = 320;
export const HEIGHT = 130;
export const LEFT = 38;
export const FOOT = HEIGHT - 22;
const RIGHT = 8;
const TOP = 10;

export interface Strip {
  /** One `points` of a polyline for each stretch. */
  lines: string[];
  gaps: { x: number; width: number; seconds: number }[];
  ticks: { y: number; mpm: number }[];
  /** Where a speed stands. */
  y: (mpm: number) => number;
  seconds: number;
}

/** The strip of a trace with at least one point, high enough for `also` m/min. */
export function stripOf({ stretches, gaps }: Measured, also: number | null): Strip {
  const moments = stretches.flat();
  const [first, last] = [moments[0]!.at_ms, moments.at(-1)!.at_ms];
  const top = 1.1 * Math.max(100, also ?? 0, ...moments.map((moment) => moment.speed_mps * 60));
  const x = (at_ms: number): number => LEFT + ((at_ms - first) / Math.max(1, last - first)) * (WIDTH - LEFT - RIGHT);
  const y = (mpm: number): number => FOOT - (mpm / top) * (FOOT - TOP);
  const step = top > 600 ? 200 : 100;
  return {
    lines: stretches.map((stretch) => stretch.map((moment) => `${x(moment.at_ms).toFixed(1)},${y(moment.speed_mps * 60).toFixed(1)}`).join(" ")),
    gaps: gaps.map(({ from_ms, to_ms }) => ({ x: x(from_ms), width: x(to_ms) - x(from_ms), seconds: Math.round((to_ms - from_ms) / 1000) })),
    ticks: Array.from({ length: Math.floor(top / step) + 1 }, (_, n) => ({ mpm: n * step, y: y(n * step) })),
    y, seconds: (last - first) / 1000,
  };
}
