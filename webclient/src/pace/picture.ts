// Where everything stands in the picture of the last canters: one mark a canter with its ± as a bar, the
// target as a line, and around it the band in which this timing cannot tell. Units of the drawing. (Drawn by
// hand in SVG: it scales, prints and is read out, and a charting library would be a fifth of the client.)

import type { Compared } from "./comparison.ts";
import { TOLD_APART_FROM } from "./speed.ts";

export const WIDTH = 320;
export const HEIGHT = 150;
const LEFT = 44;
const RIGHT = 12;
const TOP = 14;
const BOTTOM = 26;

export interface Mark {
  x: number;
  y: number;
  low_y: number;
  high_y: number;
  /** Where this canter's own target stands, when it had another than the current one. */
  target_y: number | null;
  current: boolean;
}

export interface Picture {
  marks: Mark[];
  ticks: { y: number; mpm: number }[];
  target: { y: number; band_top: number; band_height: number } | null;
}

interface Range {
  low: number;
  high: number;
}

function rangeOf(compared: Compared[], target: number | null): Range {
  const reach = compared.flatMap(({ pace }) => [pace.speed_mpm - 2 * pace.speed_u_mpm, pace.speed_mpm + 2 * pace.speed_u_mpm]);
  const own = compared.map(({ ridden }) => ridden.body.target_speed_mpm);
  const values = [...reach, ...[...own, target].filter((one) => one !== null)];
  const [low, high] = [Math.min(...values), Math.max(...values)];
  const air = Math.max(5, (high - low) * 0.1);
  return { low: low - air, high: high + air };
}

/** Round steps so that three to six of them cross the range. */
function stepOf({ low, high }: Range): number {
  const rough = (high - low) / 5;
  const power = 10 ** Math.floor(Math.log10(rough));
  return ([1, 2, 5, 10].find((step) => step * power >= rough) ?? 10) * power;
}

function ticksOf(range: Range, y: (mpm: number) => number): Picture["ticks"] {
  const step = stepOf(range);
  const first = Math.ceil(range.low / step);
  const count = Math.floor(range.high / step) - first + 1;
  return Array.from({ length: count }, (_, n) => ({ mpm: (first + n) * step, y: y((first + n) * step) }));
}

/** The picture of at least one canter, against a target in m/min or none. */
export function picture(compared: Compared[], targetMpm: number | null): Picture {
  const range = rangeOf(compared, targetMpm);
  const y = (mpm: number): number => TOP + ((range.high - mpm) / (range.high - range.low)) * (HEIGHT - TOP - BOTTOM);
  const clamp = (mpm: number): number => y(Math.min(range.high, Math.max(range.low, mpm)));
  const room = (WIDTH - LEFT - RIGHT) / compared.length;
  const ownTarget = (mpm: number | null): number | null => (mpm === null || mpm === targetMpm ? null : y(mpm));
  const marks = compared.map(({ pace, current, ridden }, n) => ({
    x: LEFT + room * (n + 0.5),
    y: y(pace.speed_mpm),
    low_y: clamp(pace.speed_mpm - pace.speed_u_mpm),
    high_y: clamp(pace.speed_mpm + pace.speed_u_mpm),
    target_y: ownTarget(ridden.body.target_speed_mpm),
    current,
  }));
  return { marks, ticks: ticksOf(range, y), target: targetOf(compared, targetMpm, y, clamp) };
}

function targetOf(
  compared: Compared[], targetMpm: number | null, y: (mpm: number) => number, clamp: (mpm: number) => number,
): Picture["target"] {
  const now = compared.at(-1);
  if (targetMpm === null || now === undefined) return null;
  const reach = TOLD_APART_FROM * now.pace.speed_u_mpm;
  const [top, bottom] = [clamp(targetMpm + reach), clamp(targetMpm - reach)];
  return { y: y(targetMpm), band_top: top, band_height: bottom - top };
}
