// How long to wait before trying again: longer each time, never the same on two phones.

const FIRST_MS = 4000;
export const LONGEST_MS = 60_000;

/** After `failures` tries in a row: 4 s, 8 s … at most 60 s, each shortened by up to half at random. */
export function backOff(failures: number, random: () => number = Math.random): number {
  const whole = Math.min(LONGEST_MS, FIRST_MS * 2 ** Math.min(failures, 10));
  return Math.round(whole * (1 - random() / 2));
}
