// What a profile asks by its nature, used where nobody ticked what the fence asks. The twin of BY_PROFILE in
// server/fieldtally/readiness/fence_asks.py; a test compares them.

import type { Ask, Profile } from "../entries/bodies.ts";

export const ASKS_BY_PROFILE: Record<Profile, readonly Ask[]> = {
  vertical: ["fixed"], oxer: ["fixed"], triple_bar: ["fixed"], ramp: ["fixed"], table: ["fixed", "wide_table"],
  log: ["fixed"], wall: ["fixed"], palisade: ["fixed"], rail: ["fixed", "airy_rail"], roofed: ["fixed"],
  brush: ["brush"], bullfinch: ["brush"], corner: ["fixed", "corner"], narrow: ["fixed", "narrow"],
  chevron: ["fixed", "narrow"], keyhole: ["fixed"], trakehner: ["fixed", "ditch"], ditch: ["ditch"],
  ditch_and_brush: ["brush", "ditch"], step: ["bank"], bank: ["bank"], drop: ["drop"], water: ["water"],
  sunken_road: ["bank", "drop"], coffin: ["fixed", "ditch"], cross_pole: ["show_jump"],
};

/** What a fence or an element asks: as ticked, else by its profile. */
export function asksOf(part: { profile: Profile; asks: readonly Ask[] }): readonly Ask[] {
  return part.asks.length > 0 ? part.asks : ASKS_BY_PROFILE[part.profile];
}
