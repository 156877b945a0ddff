// Patterns of trouble of one horse: looks at every side that is worth it, and says only what chance alone
// would hardly do.

import { isFall } from "../recording/outcomes.ts";
import { type Aspect, type AspectId, ASPECTS } from "./aspects.ts";
import { byChance, type Chance, sharedLevel } from "./exactTest.ts";
import { groupBy } from "./group.ts";
import { type History, type Meeting, meetings } from "./meetings.ts";
import { isTroubleOnSide, leastMet, maySay, RULE, saidEnough, worthLooking } from "./rule.ts";
import { counts, type Counts, daysOf, knownOf, type Side, sideOf } from "./sides.ts";

/** A pattern. `on`, `off`: on the side and off it. `behind`: the troubles on the side, newest first.
 * `clear_since`: how many on the side have gone well since the last of them. */
export interface Pattern {
  aspect: AspectId;
  side: string;
  of_outing: boolean;
  on: Counts;
  off: Counts;
  chance: Chance;
  behind: Meeting[];
  clear_since: number;
  unsaid: number;
  /** Patterns that share at least half of the troubles behind this one. */
  shared: { aspect: AspectId; side: string; troubles: number }[];
}

/** looked: there was enough to find something. unsaid: too seldom noted. too_little: too few fences or
 * troubles so far. */
export type Looked = "looked" | "unsaid" | "too_little";

export interface Found {
  patterns: Pattern[];
  looked: { aspect: AspectId; looked: Looked }[];
  meetings: number;
  troubles: number;
  falls: boolean;
  outings: number;
}

const DAY_MS = 86_400_000;

/** The civil day so many days before another. */
export function dayBefore(day: string, days: number): string {
  return new Date(Date.parse(day) - days * DAY_MS).toISOString().slice(0, 10);
}

/** The meetings of the last year up to `as_of`, a civil day. */
export function lately(history: History, as_of: string): Meeting[] {
  const from = dayBefore(as_of, RULE.window_days);
  return meetings({ ...history, outings: history.outings.filter(({ body }) => body.date > from && body.date <= as_of) });
}

export function findPatterns(history: History, as_of: string): Found {
  const all = lately(history, as_of);
  const views = ASPECTS.map((aspect) => viewOf(aspect, all));
  const asked = [...groupBy(views.flatMap((view) => view.asked), ({ side }) => side.aspect.family).values()].flatMap(levelled);
  const said = asked.filter(({ side, chance, level }) => maySay(side, chance, level));
  const troubles = all.filter(({ trouble }) => trouble);
  return {
    patterns: withShared(withoutDoubles(said).sort((one, other) => one.chance.p - other.chance.p).map(patternOf)),
    looked: views.map(({ aspect, unsaid }) => ({ aspect, looked: unsaid ? "unsaid" : couldCount(asked, aspect) ? "looked" : "too_little" })),
    meetings: all.length, troubles: troubles.length, outings: new Set(all.map(({ attempt }) => attempt.outing_id)).size,
    falls: troubles.some(({ attempt }) => isFall(attempt.outcome)),
  };
}

/** A side worth asking about, with what chance alone can do there and the level at which it may be said. */
interface Asked {
  side: Side;
  chance: Chance;
  level: number;
}

interface View {
  aspect: AspectId;
  unsaid: boolean;
  asked: Omit<Asked, "level">[];
}

function viewOf(aspect: Aspect, all: readonly Meeting[]): View {
  const known = knownOf(aspect, all);
  if (!saidEnough(known.length, all.length)) return { aspect: aspect.id, unsaid: true, asked: [] };
  const met = new Map<string, number>();
  for (const each of known) for (const side of each.sides) met.set(side, (met.get(side) ?? 0) + 1);
  const often = [...met].filter(([side, n]) => n >= leastMet(aspect) && (aspect.sides?.includes(side) ?? true));
  const sides = often.map(([side]) => sideOf(aspect, side, known, all.length)).filter(worthLooking);
  return { aspect: aspect.id, unsaid: false, asked: sides.map((side) => ({ side, chance: byChance(daysOf(side.units)) })) };
}

/** The sides of one family, each with the level left for it; a double asks nothing new. */
function levelled(these: readonly Omit<Asked, "level">[]): Asked[] {
  const least_ps = withoutDoubles(these).map(({ chance }) => chance.least_p);
  const level = sharedLevel(least_ps, RULE.alpha * RULE.share[these[0]!.side.aspect.family]);
  return these.map((each) => ({ ...each, level }));
}

/** Whether anything could have been found there, however the troubles had fallen. */
function couldCount(asked: readonly Asked[], aspect: AspectId): boolean {
  return asked.some(({ side, chance, level }) => side.aspect.id === aspect && chance.least_p <= level);
}

/** Two sides with the very same meetings are one question: the first asks it. */
function withoutDoubles<A extends { side: Side }>(asked: readonly A[]): A[] {
  const seen = new Set<string>();
  return asked.filter(({ side: { units } }) => {
    const key = units.flatMap((unit) => (unit.on_side ? unit.behind.map(({ attempt_id }) => attempt_id) : [])).sort().join();
    return !seen.has(key) && seen.add(key);
  });
}

function patternOf({ side: { aspect, side, units, unsaid }, chance }: Asked): Pattern {
  const behind = units.filter(isTroubleOnSide).flatMap((unit) => unit.behind).sort((one, other) => byTime(other, one));
  return {
    aspect: aspect.id, side, of_outing: aspect.of_outing === true, on: counts(units, true), off: counts(units, false),
    chance, behind, unsaid, clear_since: aspect.of_outing ? 0 : clearSince(units, behind[0]!), shared: [],
  };
}

function clearSince(units: Side["units"], last: Meeting): number {
  return units.filter((unit) => unit.on_side && byTime(unit.behind[0]!, last) > 0).length;
}

// by the day ridden first: an outing may have been written down weeks later
function byTime(one: Meeting, other: Meeting): number {
  return Date.parse(one.outing.body.date) - Date.parse(other.outing.body.date) || one.at_ms - other.at_ms;
}

function withShared(patterns: readonly Pattern[]): Pattern[] {
  return patterns.map((pattern) => {
    const mine = new Set(pattern.behind.map(({ attempt_id }) => attempt_id));
    const shared = patterns.filter((other) => other !== pattern).map(({ aspect, side, behind }) => ({
      aspect, side, troubles: behind.filter(({ attempt_id }) => mine.has(attempt_id)).length,
    }));
    return { ...pattern, shared: shared.filter(({ troubles }) => 2 * troubles >= mine.size) };
  });
}
