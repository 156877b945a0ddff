// How a fence was met and how the horse went: carried over from the last attempt, so that a tap need not
// say it again. Null means that nobody said; it is never guessed.

import { COMPANIES, GROUNDS, LANDINGS, PACES, REINS, WAYS } from "../entries/bodies.ts";
import type { Attempt, Attitude, Outing, Presentation, Profile } from "../entries/bodies.ts";
import { inOrderMade } from "./made.ts";
import type { Made } from "./made.ts";

export interface Manner {
  presentation: Presentation;
  attitude: Attitude | null;
}

/** The sides of a presentation and the words each may take, in the order of the screen. */
export const SIDES = {
  rein: REINS, ground: GROUNDS, way: WAYS, landing: LANDINGS, company: COMPANIES, pace: PACES,
} as const;

export type Side = keyof typeof SIDES;

export const SIDE_NAMES = Object.keys(SIDES) as Side[];

export const NOTHING_SAID: Manner = {
  presentation: { rein: null, ground: null, way: null, landing: null, company: null, pace: null },
  attitude: null,
};

/** Profiles that are met in a direction: up or down, in, through or out. */
const WITH_A_WAY: readonly Profile[] = ["step", "bank", "drop", "water", "sunken_road", "coffin"];
const WITH_A_LANDING: readonly Profile[] = ["drop", "water", "bank", "step"];

/** The sides worth asking first at such a fence; the others stay within reach. */
export function firstSides(profile: Profile): Side[] {
  const way: Side[] = WITH_A_WAY.includes(profile) ? ["way"] : [];
  const landing: Side[] = WITH_A_LANDING.includes(profile) ? ["landing"] : [];
  return [...way, ...landing, "rein", "ground", "pace", "company"];
}

export function otherSides(profile: Profile): Side[] {
  const first = firstSides(profile);
  return SIDE_NAMES.filter((side) => !first.includes(side));
}

/** The same manner with one side changed; the word already chosen is taken back to "not said". */
export function withSide<S extends Side>(manner: Manner, side: S, word: Presentation[S]): Manner {
  const next = manner.presentation[side] === word ? null : word;
  return { ...manner, presentation: { ...manner.presentation, [side]: next } };
}

export function withAttitude(manner: Manner, attitude: Attitude): Manner {
  return { ...manner, attitude: manner.attitude === attitude ? null : attitude };
}

export function mannerOf(attempt: Pick<Attempt, "presentation" | "attitude">): Manner {
  return { presentation: { ...NOTHING_SAID.presentation, ...attempt.presentation }, attitude: attempt.attitude };
}

/** The outings of one horse, by record id: attempts name their outing, and the outing names the horse. */
export function outingsOfHorse(outings: readonly Made<Outing>[], horse_id: string): Set<string> {
  return new Set(outings.filter((outing) => outing.body.horse_id === horse_id).map((outing) => outing.record_id));
}

/** Manner of the last attempt among `attempts` (all at one fence) with this horse at this element (null: the
 * fence as such); nothing said where there was none. */
export function rememberedManner(
  attempts: readonly Made<Attempt>[], horseOutings: ReadonlySet<string>, element: Attempt["element"],
): Manner {
  const mine = inOrderMade(attempts.filter((attempt) => horseOutings.has(attempt.body.outing_id)));
  const last = mine.findLast((attempt) => attempt.body.element === element);
  return last ? mannerOf(last.body) : NOTHING_SAID;
}

/** Whether two manners say the same. */
export function sameManner(one: Manner, other: Manner): boolean {
  return one.attitude === other.attitude && SIDE_NAMES.every((side) => one.presentation[side] === other.presentation[side]);
}

/** The words said, in the order of the sides, for a line such as "left, uphill, canter". */
export function saidWords(presentation: Presentation): { side: Side; word: string }[] {
  return SIDE_NAMES.flatMap((side) => {
    const word = presentation[side];
    return word ? [{ side, word }] : [];
  });
}
