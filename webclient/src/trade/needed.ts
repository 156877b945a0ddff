// Which of its measurements decide whether a fence fits a level, by how it is built. Twin of PROFILES in
// server/fieldtally/trade/asks.py; a test compares them.

import type { Profile } from "../entries/bodies.ts";
import type { Dimension } from "../recording/dimensions.ts";

const HEIGHT: readonly Dimension[] = ["height_cm"];
const TOP: readonly Dimension[] = ["height_cm", "spread_top_cm"];
const BASE: readonly Dimension[] = ["height_cm", "spread_base_cm"];
const BRUSH: readonly Dimension[] = ["height_cm", "brush_height_cm"];
const DROP: readonly Dimension[] = ["drop_cm"];

/** Every other kind needs its height. */
const OTHERS: { readonly [P in Profile]?: readonly Dimension[] } = {
  oxer: TOP, corner: TOP, triple_bar: BASE, ramp: BASE, roofed: BASE, table: [...TOP, "spread_base_cm"],
  brush: BRUSH, bullfinch: BRUSH, ditch_and_brush: BRUSH, ditch: ["spread_without_height_cm"], drop: DROP, sunken_road: DROP, water: [],
};

export function neededOf(profile: Profile): readonly Dimension[] {
  return OTHERS[profile] ?? HEIGHT;
}
