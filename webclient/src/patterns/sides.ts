// One side of one aspect against all others: what is counted, and on which days.

import type { Aspect } from "./aspects.ts";
import type { Day } from "./exactTest.ts";
import { groupBy } from "./group.ts";
import type { Meeting } from "./meetings.ts";

/** One thing counted: a fence met on a day, or a whole day. `meetings` holds what is behind it. */
export interface Unit {
  day: string;
  on_side: boolean;
  trouble: boolean;
  behind: Meeting[];
}

export interface Side {
  aspect: Aspect;
  side: string;
  units: Unit[];
  /** Meetings of which this aspect was noted, and of which nobody said it. */
  said: number;
  unsaid: number;
}

/** A meeting with the sides it stands on. */
export interface Known {
  meeting: Meeting;
  sides: readonly string[];
}

export function knownOf(aspect: Aspect, all: readonly Meeting[]): Known[] {
  return all.flatMap((meeting) => {
    const sides = aspect.sidesOf(meeting);
    return sides === null ? [] : [{ meeting, sides }];
  });
}

/** The units of one side, out of `met` meetings of which some are `known`. A fence counts once a day on each
 * side, as it was first met there, and no more once there was trouble at it: a second try is no new evidence,
 * and whoever tries again from trot or on the other rein would make those look good. */
export function sideOf(aspect: Aspect, side: string, known: readonly Known[], met: number): Side {
  const units = aspect.of_outing ? wholeDays(side, known) : firstMeetings(side, known);
  return { aspect, side, units, said: known.length, unsaid: met - known.length };
}

function firstMeetings(side: string, known: readonly Known[]): Unit[] {
  const seen = { on: new Set<string>(), off: new Set<string>() };
  return known.flatMap(({ meeting, sides }) => {
    const on_side = sides.includes(side);
    const here = on_side ? seen.on : seen.off;
    if (meeting.retry || here.has(meeting.met_there)) return [];
    here.add(meeting.met_there);
    return [{ day: meeting.attempt.outing_id, on_side, trouble: meeting.trouble, behind: [meeting] }];
  });
}

// Of the outings, all are compared with each other: they are one day of the test.
function wholeDays(side: string, known: readonly Known[]): Unit[] {
  const byOuting = groupBy(known, ({ meeting }) => meeting.attempt.outing_id);
  return [...byOuting.values()].map((day) => {
    const troubles = day.filter(({ meeting }) => meeting.trouble).map(({ meeting }) => meeting);
    return { day: "all", on_side: day[0]!.sides.includes(side), trouble: troubles.length > 0, behind: troubles };
  });
}

export function daysOf(units: readonly Unit[]): Day[] {
  return [...groupBy(units, ({ day }) => day).values()].map((day) => ({
    met: day.length,
    on_side: day.filter((unit) => unit.on_side).length,
    troubles: day.filter((unit) => unit.trouble).length,
    troubles_on_side: day.filter((unit) => unit.trouble && unit.on_side).length,
  }));
}

export interface Counts {
  met: number;
  troubles: number;
}

export function counts(units: readonly Unit[], on_side: boolean): Counts {
  const these = units.filter((unit) => unit.on_side === on_side);
  return { met: these.length, troubles: these.filter((unit) => unit.trouble).length };
}
