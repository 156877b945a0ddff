// Invented rides for the tests of traces: a made-up field at a place that stands for no place in particular.

import { metresPerDegree } from "../../webclient/src/location/earth.ts";
import type { Point } from "../../webclient/src/location/points.ts";

export const FIELD = { latitude: 52.2, longitude: -1.6 };
export const START_MS = Date.UTC(2026, 4, 3, 9, 0, 0);

/** The same numbers each time (mulberry32): seeds name the runs of a test. */
export function chance(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

/** Normal numbers with standard deviation 1 (Box and Muller). */
export function normal(seed: number): () => number {
  const next = chance(seed);
  return () => Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next());
}

/** A point so many metres east and north of the field's corner, so many seconds after the start. */
export function at(seconds: number, x: number, y: number, accuracy_m: number | null = 5): Point {
  const { north, east } = metresPerDegree(FIELD.latitude);
  return { latitude: FIELD.latitude + y / north, longitude: FIELD.longitude + x / east, accuracy_m, at_ms: START_MS + Math.round(seconds * 1000) };
}

/** One point a second along a path, each off by what `noise` gives, in m. */
export function ride(seconds: number, path: (s: number) => [number, number], noise: () => number, { from = 0, accuracy = 5 } = {}): Point[] {
  return Array.from({ length: seconds + 1 }, (_, s) => {
    const [x, y] = path(s);
    return at(from + s, x + noise(), y + noise(), accuracy);
  });
}

/** Error that stays with the phone for a while: an AR(1) walk with this spread and memory in s. */
export function wander(seed: number, sd: number, memory_s: number): () => number {
  const next = normal(seed);
  const keeps = Math.exp(-1 / memory_s);
  let now = [sd * next(), sd * next()];
  let turn = 0;
  return () => {
    turn = 1 - turn;
    now[turn] = keeps * now[turn]! + sd * Math.sqrt(1 - keeps * keeps) * next();
    return now[turn]!;
  };
}
