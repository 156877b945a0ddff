// When there is enough to speak: docs/patterns.md gives the reasons and what the rule does on made-up seasons.

import type { Family } from "./aspects.ts";
import type { Chance } from "./exactTest.ts";
import { counts, type Side, type Unit } from "./sides.ts";

export const RULE = {
  /** Only what happened this lately, in days. */
  window_days: 365,
  /** Fences met on the side, and off it. */
  least_met: 8,
  /** Outings on the side and off it, where whole outings are counted. */
  least_outings: 4,
  /** Troubles on the side, from at least so many fences and so many outings. */
  least_troubles: 3,
  least_fences: 2,
  least_days: 2,
  /** Of all meetings, so many must say the aspect at all: who notes the rein only when a horse stops, tells
   * nothing about reins. */
  least_said: 0.5,
  /** Chance of speaking where there is no pattern, over everything looked at together, and how it is shared
   * out: the larger parts go to what a governing body advises to look at, rein and kind of fence. */
  alpha: 0.05,
  share: { rein: 0.3, kind: 0.3, fence: 0.1, manner: 0.15, place: 0.15 } satisfies Record<Family, number>,
};

export function leastMet({ of_outing }: Pick<Side["aspect"], "of_outing">): number {
  return of_outing ? RULE.least_outings : RULE.least_met;
}

/** Whether an aspect was noted at enough of the `met` meetings to say anything of it. */
export function saidEnough(said: number, met: number): boolean {
  return said >= RULE.least_said * met;
}

/** Whether there is enough on both sides to look at all. This asks only how often each side was met and how
 * many troubles there were, never on which side they fell: else looking would favour what it finds. */
export function worthLooking({ aspect, units }: Side): boolean {
  const [on, off] = [counts(units, true), counts(units, false)];
  const least = leastMet(aspect);
  return on.met >= least && off.met >= least && on.troubles + off.troubles >= RULE.least_troubles;
}

/** Whether what was found may be said, at the level left for one side. */
export function maySay(side: Side, { p }: Chance, level: number): boolean {
  const [on, off] = [counts(side.units, true), counts(side.units, false)];
  return p <= level && on.troubles >= RULE.least_troubles && on.troubles * off.met > off.troubles * on.met && spread(side);
}

// One bad fence or one bad day is no pattern of a rein or a kind: unless it is the fence itself that is asked about.
function spread({ aspect, units }: Side): boolean {
  const behind = units.filter(isTroubleOnSide).flatMap((unit) => unit.behind);
  const fences = new Set(behind.map(({ attempt }) => attempt.fence_id)).size;
  const days = new Set(behind.map(({ attempt }) => attempt.outing_id)).size;
  return days >= RULE.least_days && (aspect.id === "fence" || fences >= RULE.least_fences);
}

export function isTroubleOnSide(unit: Unit): boolean {
  return unit.trouble && unit.on_side;
}
