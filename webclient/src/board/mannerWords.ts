// How a fence was met, in one line: only what somebody said.

import type { Attempt } from "../entries/bodies.ts";

const SIDES = ["rein", "ground", "way", "landing", "company", "pace"] as const;
/** The words file calls the paces of a horse gaits, for "pace" is the title of a phase there. */
const PREFIX = { rein: "rein", ground: "ground", way: "way", landing: "landing", company: "company", pace: "gait" };

export function mannerWords(attempt: Attempt, say: (phrase: { key: string }) => string): string {
  const sides = SIDES.flatMap((side) => {
    const word = attempt.presentation[side];
    return word === null ? [] : [say({ key: `${PREFIX[side]}.${word}` })];
  });
  const attitude = attempt.attitude === null ? [] : [say({ key: `attitude.${attempt.attitude}` })];
  return [...attitude, ...sides].join(", ");
}
