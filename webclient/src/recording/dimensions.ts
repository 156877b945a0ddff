// The dimensions a fence can have, which of them a profile makes worth asking first, and how far they go.

import type { Fence, Profile } from "../entries/bodies.ts";

/** Least and most in cm, as the server's book takes them (book/kinds.py; a test compares them). */
export const DIMENSION_LIMITS_CM = {
  height_cm: [1, 250],
  brush_height_cm: [1, 300],
  spread_top_cm: [1, 600],
  spread_base_cm: [1, 800],
  spread_without_height_cm: [1, 900],
  drop_cm: [1, 400],
  water_depth_cm: [1, 150],
  face_width_cm: [1, 3000],
} as const satisfies { [K in keyof Fence]?: readonly [number, number] };

export type Dimension = keyof typeof DIMENSION_LIMITS_CM;

export const DIMENSIONS = Object.keys(DIMENSION_LIMITS_CM) as Dimension[];

export type Measured = Record<Dimension, number | null>;

const UPRIGHT: readonly Dimension[] = ["height_cm", "spread_top_cm"];
const SPREAD: readonly Dimension[] = ["height_cm", "spread_top_cm", "spread_base_cm"];
const FACE: readonly Dimension[] = ["height_cm", "spread_top_cm", "face_width_cm"];
const BRUSH: readonly Dimension[] = ["height_cm", "brush_height_cm", "spread_top_cm"];
const STEP: readonly Dimension[] = ["height_cm", "drop_cm"];

const FIRST: Record<Profile, readonly Dimension[]> = {
  vertical: ["height_cm"], cross_pole: ["height_cm"], rail: UPRIGHT, wall: UPRIGHT, palisade: UPRIGHT, keyhole: UPRIGHT,
  oxer: SPREAD, triple_bar: SPREAD, ramp: SPREAD, table: SPREAD, log: SPREAD, roofed: SPREAD,
  brush: BRUSH, bullfinch: BRUSH, corner: FACE, narrow: FACE, chevron: FACE,
  trakehner: ["height_cm", "spread_without_height_cm"], ditch: ["spread_without_height_cm"],
  ditch_and_brush: ["height_cm", "brush_height_cm", "spread_without_height_cm"],
  step: STEP, bank: STEP, sunken_road: STEP, drop: ["drop_cm"], water: ["water_depth_cm", "drop_cm"],
  coffin: ["height_cm", "spread_without_height_cm"],
};

/** The dimensions such a fence is usually measured by. */
export function firstDimensions(profile: Profile): readonly Dimension[] {
  return FIRST[profile];
}

/** The others: reachable, but not in the way. One that holds a value always counts as first. */
export function otherDimensions(profile: Profile): Dimension[] {
  return DIMENSIONS.filter((dimension) => !FIRST[profile].includes(dimension));
}

export function withinLimits(dimension: Dimension, value_cm: number): boolean {
  const [least, most] = DIMENSION_LIMITS_CM[dimension];
  return value_cm >= least && value_cm <= most;
}

/** Where a stepping button starts when nothing is measured yet, in cm: a middling value, so that few taps
 * reach any other. Our choice. */
export const STEP_FROM_CM: Record<Dimension, number> = {
  height_cm: 80, brush_height_cm: 100, spread_top_cm: 60, spread_base_cm: 90, spread_without_height_cm: 100,
  drop_cm: 60, water_depth_cm: 15, face_width_cm: 200,
};
