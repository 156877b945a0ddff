// How far and how fast, from where the phone says it was. Standing still adds nothing, noise adds nothing, gaps
// are never bridged, and every result has its standard uncertainty. docs/pace.md has the formulas and what they
// leave out. All times in s and lengths in m inside.

import { accuracyOf, believe, usualStepMs } from "./believe.ts";
import { metresBetween, offsetOf } from "./earth.ts";
import type { Point } from "./points.ts";

/** Half the time in s over which a speed is fitted, and over which it is asked whether there was any. */
const NEAR_S = 2.5;
const WIDE_S = 5;
/** Slower than this is standing: a walk is about 1.7 m/s (100 m/min). */
const SLOWEST_MPS = 1.0;
/** A speed counts as moving from so many standard uncertainties on. */
const SURE = 3;
/** A phone's radius over its standard deviation along one axis, were it the 68 % of Android's documentation;
 * the 95 % of the W3C's would make it 2.45 and the uncertainty smaller. */
const RADIUS_PER_SD = 1.515;
/** Who gets no farther than this in m has stood, whatever the phone said. */
const SHORTEST_M = 15;
/** A straight fit over five even points reads a bend short by this much times the square of the turn a step. */
const SHORT_IN_BENDS = 17 / 30;

/** Something left out between two moments (ms since 1970). */
export interface Gap {
  from_ms: number;
  to_ms: number;
}

/** Speed at one moment; `moving` is false where noise alone may explain it. */
export interface Moment {
  at_ms: number;
  speed_mps: number;
  moving: boolean;
}

/** The moving part as a whole; `_u` marks the standard uncertainty of the value before it. */
export interface Moved {
  distance_m: number;
  distance_u_m: number;
  moving_s: number;
  moving_u_s: number;
  speed_mpm: number;
  speed_u_mpm: number;
}

export interface Measured {
  /** One list a stretch without gaps; what was drawn is what was measured. */
  stretches: Moment[][];
  gaps: Gap[];
  /** Null where nothing surely moved. */
  moved: Moved | null;
  coarse: number;
  jumps: number;
}

interface Spot {
  t: number;
  x: number;
  y: number;
}

interface Fitted {
  vx: number;
  vy: number;
  speed: number;
  /** Sum of squares of the times about their mean: the spread that the speed's uncertainty divides by. */
  stt: number;
  residue: number;
  freedom: number;
  lasts: number;
}

function total<T>(all: T[], of: (each: T) => number): number {
  return all.reduce((sum, each) => sum + of(each), 0);
}

const mean = (values: number[]): number => total(values, (value) => value) / values.length;

/** The spots within `half` of the n-th, as many before as after where there are; at an end the window keeps
 * its length. At least the neighbours. */
function around(spots: Spot[], n: number, half: number): Spot[] {
  const [first, last] = [spots[0]!.t, spots.at(-1)!.t];
  const middle = Math.min(Math.max(spots[n]!.t, first + half), Math.max(last - half, first + half));
  const near = (place: number): boolean => place >= 0 && place < spots.length && Math.abs(spots[place]!.t - middle) <= half;
  let [from, to] = [Math.max(0, n - 1), Math.min(spots.length - 1, n + 1)];
  while (near(from - 1)) from--;
  while (near(to + 1)) to++;
  return spots.slice(from, to + 1);
}

/** The velocity that fits best (least squares), and what it leaves over. */
function fit(spots: Spot[]): Fitted {
  const [t, x, y] = [mean(spots.map((spot) => spot.t)), mean(spots.map((spot) => spot.x)), mean(spots.map((spot) => spot.y))];
  let [stt, stx, sty, all] = [0, 0, 0, 0];
  for (const spot of spots) {
    stt += (spot.t - t) ** 2;
    stx += (spot.t - t) * (spot.x - x);
    sty += (spot.t - t) * (spot.y - y);
    all += (spot.x - x) ** 2 + (spot.y - y) ** 2;
  }
  const [vx, vy] = stt > 0 ? [stx / stt, sty / stt] : [0, 0];
  const residue = Math.max(0, all - (vx * vx + vy * vy) * stt);
  return { vx, vy, speed: Math.hypot(vx, vy), stt, residue, freedom: 2 * Math.max(0, spots.length - 2), lasts: spots.at(-1)!.t - spots[0]!.t };
}

interface Stretch {
  spots: Spot[];
  /** The radius of each, in m. */
  radii: number[];
  near: Fitted[];
  wide: Fitted[];
}

function stretchOf(points: Point[]): Stretch {
  const spots = points.map((point) => ({ t: point.at_ms! / 1000, ...offsetOf(points[0]!, point) }));
  const fits = (half: number): Fitted[] => spots.map((_, n) => fit(around(spots, n, half)));
  return { spots, radii: points.map(accuracyOf), near: fits(NEAR_S), wide: fits(WIDE_S) };
}

/** Standard deviation in m of a point along one axis: as it jitters, and as the phone believes. */
interface Noise {
  jitter: number;
  sd: number;
}

function noiseOf({ radii, near }: Stretch, from = 0, to = near.length): Noise {
  const fits = near.slice(from, to);
  const freedom = total(fits, (each) => each.freedom);
  const jitter = freedom === 0 ? 0 : Math.sqrt(total(fits, (each) => each.residue) / freedom);
  return { jitter, sd: Math.max(jitter, mean(radii.slice(from, to)) / RADIUS_PER_SD) };
}

/** Fits to noise come out too fast; on the average by this. */
function withoutNoise({ speed, stt }: Fitted, { jitter }: Noise): number {
  return Math.sqrt(Math.max(0, speed ** 2 - (stt > 0 ? (2 * jitter ** 2) / stt : 0)));
}

function isMoving({ speed, lasts }: Fitted, { sd }: Noise): boolean {
  return lasts > 0 && speed > Math.max(SLOWEST_MPS, (SURE * Math.SQRT2 * sd) / lasts);
}

/** The places from `from` to `to` of one stretch in which the pair surely moved. */
interface Part {
  from: number;
  to: number;
}

function movingParts(stretch: Stretch): Part[] {
  const noise = noiseOf(stretch);
  const parts: Part[] = [];
  stretch.wide.forEach((wide, n) => {
    if (!isMoving(wide, noise)) return;
    if (parts.at(-1)?.to === n - 1) parts.at(-1)!.to = n;
    else parts.push({ from: n, to: n });
  });
  return parts.map((part) => trimmed(stretch, part)).filter((part) => goesSomewhere(stretch, part, noise));
}

// The wide fit sees a start some seconds early and a halt some seconds late.
function trimmed({ near }: Stretch, { from, to }: Part): Part {
  const speeds = near.slice(from, to + 1).map((each) => each.speed).sort((one, other) => one - other);
  const half = speeds[speeds.length >> 1]! / 2;
  while (from < to && near[from]!.speed < half) from++;
  while (from < to && near[to]!.speed < half) to--;
  return { from, to };
}

function goesSomewhere({ spots }: Stretch, { from, to }: Part, { sd }: Noise): boolean {
  const start = spots[from]!;
  const reach = Math.max(...spots.slice(from, to + 1).map((spot) => Math.hypot(spot.x - start.x, spot.y - start.y)));
  return reach > Math.max(SHORTEST_M, 2 * SURE * sd);
}

interface Sum {
  distance: number;
  seconds: number;
  variance: number;
  bends: number;
}

function turnBetween(one: Fitted, other: Fitted): number {
  if (one.speed === 0 || other.speed === 0) return 0;
  return (one.vx / one.speed - other.vx / other.speed) ** 2 + (one.vy / one.speed - other.vy / other.speed) ** 2;
}

/** JCGM 100:2008, 5.1.2: the ends of a part count once each, a point between by how far the path turns there;
 * besides, all of what the bends may have cost. */
function sumOf(stretch: Stretch, { from, to }: Part): Sum {
  const { spots, near } = stretch;
  const noise = noiseOf(stretch, from, to + 1);
  let [distance, turns] = [0, 0];
  for (let n = from + 1; n <= to; n++) {
    distance += ((withoutNoise(near[n - 1]!, noise) + withoutNoise(near[n]!, noise)) / 2) * (spots[n]!.t - spots[n - 1]!.t);
    turns += turnBetween(near[n - 1]!, near[n]!);
  }
  return { distance, seconds: spots[to]!.t - spots[from]!.t, variance: noise.sd ** 2 * (2 + turns), bends: (SHORT_IN_BENDS * distance * turns) / (to - from) };
}

function movedIn(sums: Sum[], step_s: number): Moved | null {
  const [distance_m, moving_s] = [total(sums, (sum) => sum.distance), total(sums, (sum) => sum.seconds)];
  if (distance_m <= 0 || moving_s <= 0) return null;
  const distance_u_m = Math.hypot(Math.sqrt(total(sums, (sum) => sum.variance)), total(sums, (sum) => sum.bends));
  const moving_u_s = step_s * Math.sqrt(sums.length / 6); // two ends a part, each somewhere within a step
  const speed_mpm = (60 * distance_m) / moving_s;
  const speed_u_mpm = speed_mpm * Math.hypot(distance_u_m / distance_m, moving_u_s / moving_s);
  return { distance_m, distance_u_m, moving_s, moving_u_s, speed_mpm, speed_u_mpm };
}

function momentsOf({ spots, near }: Stretch, parts: Part[]): Moment[] {
  return spots.map(({ t }, n) => {
    const moving = parts.some(({ from, to }) => from <= n && n <= to);
    return { at_ms: Math.round(t * 1000), speed_mps: moving ? near[n]!.speed : 0, moving };
  });
}

/** What a trace with times says. */
export function measure(points: Point[]): Measured {
  const { stretches: believed, coarse, jumps } = believe(points);
  const stretches = believed.map(stretchOf);
  const parts = stretches.map(movingParts);
  const sums = stretches.flatMap((stretch, n) => parts[n]!.map((part) => sumOf(stretch, part)));
  return {
    stretches: stretches.map((stretch, n) => momentsOf(stretch, parts[n]!)),
    gaps: believed.slice(1).map((next, n) => ({ from_ms: believed[n]!.at(-1)!.at_ms!, to_ms: next[0]!.at_ms! })),
    moved: movedIn(sums, usualStepMs(believed.flat()) / 1000),
    coarse, jumps,
  };
}

/** Length of a course as it was drawn, in m; gaps add nothing. */
export function lengthOf(points: Point[]): number {
  return points.reduce((sum, point, n) => (n === 0 || point.breaks ? sum : sum + metresBetween(points[n - 1]!, point)), 0);
}
