// The picture of a pattern: two bars, one a side, as long as the share that went wrong. Units of the drawing.

import type { Counts } from "./sides.ts";

export const WIDTH = 320;
export const HEIGHT = 84;
const LEFT = 8;
const RIGHT = 62;
const ROUND_UP = 0.1;

export interface Bar {
  x: number;
  y: number;
  width: number;
  height: number;
  /** Where its numbers stand. */
  text_x: number;
  text_y: number;
}

export interface Picture {
  on: Bar;
  off: Bar;
}

const share = ({ met, troubles }: Counts): number => (met === 0 ? 0 : troubles / met);

/** Both bars on one scale, which ends at the next whole tenth above the longer. */
export function picture(on: Counts, off: Counts): Picture {
  const full = Math.max(ROUND_UP, Math.ceil(Math.max(share(on), share(off)) / ROUND_UP - 1e-9) * ROUND_UP);
  const bar = (counts: Counts, y: number): Bar => {
    const width = (share(counts) / full) * (WIDTH - LEFT - RIGHT);
    return { x: LEFT, y, width, height: 18, text_x: LEFT + width + 6, text_y: y + 14 };
  };
  return { on: bar(on, 18), off: bar(off, 60) };
}
