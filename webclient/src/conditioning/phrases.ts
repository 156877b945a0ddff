// A set in a few words: “3 × 4 min, 3 min walk between”. The words are in words/en-GB/conditioning.json.

import type { WorkInterval } from "../entries/bodies.ts";
import type { Phrase } from "../pace/phrases.ts";
import type { IntervalStep } from "./steps.ts";

/** `m:ss` of a time in ms: counted down it ends at 0:00, so a part of a second counts as a whole one. */
export function minutesSeconds(ms: number, round: (seconds: number) => number = Math.ceil): string {
  const seconds = Math.max(0, round(Math.round(ms) / 1000));
  return `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, "0")}`;
}

/** A step without its speed. */
export function stepPhrase({ canters, work_min, walk_min }: Omit<IntervalStep, "speed_mpm">): Phrase {
  return { key: "conditioning.step", values: { canters, work: work_min, walk: walk_min } };
}

export function speedPhrase([low, high]: [number, number]): Phrase {
  return low === high ? { key: "conditioning.speed_one", values: { low } } : { key: "conditioning.speed_range", values: { low, high } };
}

/** What was ridden: equal canters counted, others listed. */
export function riddenPhrase(intervals: readonly WorkInterval[]): Phrase {
  const works = intervals.map(({ work_s }) => minutesSeconds(1000 * work_s));
  const alike = works.every((work) => work === works[0]);
  if (works.length === 0) return { key: "conditioning.ridden_none", values: {} };
  return alike
    ? { key: "conditioning.ridden_alike", values: { canters: works.length, work: works[0]! } }
    : { key: "conditioning.ridden_list", values: { works: works.join(", ") } };
}
