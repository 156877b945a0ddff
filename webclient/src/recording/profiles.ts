// Which profiles to offer first: those met every week, so that the list fits a screen. Common practice, no
// source; the others are one tap further.

import { type Activity, type Ask, type Profile, PROFILES } from "../entries/bodies.ts";

const IN_THE_COUNTRY: readonly Profile[] = [
  "log", "rail", "table", "roofed", "brush", "narrow", "corner", "ditch", "trakehner", "step", "drop", "water",
];
const IN_THE_ARENA: readonly Profile[] = ["vertical", "oxer", "cross_pole", "triple_bar", "wall", "narrow"];

export function commonProfiles(activity: Activity | null): readonly Profile[] {
  return activity === "jumping_school" ? IN_THE_ARENA : IN_THE_COUNTRY;
}

export function rareProfiles(activity: Activity | null): Profile[] {
  return PROFILES.filter((profile) => !commonProfiles(activity).includes(profile));
}

/** What a fence made up at such an outing asks where nobody ticked: poles in a jumping school are no proof of
 * fixed fences. Null: as its profile says. */
export function asksAtOuting(activity: Activity): Ask[] | null {
  return activity === "jumping_school" ? ["show_jump"] : null;
}
