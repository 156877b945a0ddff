// A pattern in plain words: which phrase says it, with its counts. The words are in words/en-GB/pattern.json;
// `what` is the name of a fence, an ask or a profile, which the screen puts in.

import type { Phrase } from "../pace/phrases.ts";
import type { AspectId } from "./aspects.ts";
import type { Pattern } from "./find.ts";
import type { Counts } from "./sides.ts";

/** “on the right rein”, “at a fence that asks “Ditch””. */
export function wherePhrase({ aspect, side }: Pick<Pattern, "aspect" | "side">, what: string): Phrase {
  if (aspect === "fence" || aspect === "ask" || aspect === "profile") return { key: `pattern.where_${aspect}`, values: { what } };
  const key = aspect === side ? `pattern.where_${aspect}` : `pattern.where_${aspect}_${side}`;
  return { key, values: {} };
}

const KINDS: readonly AspectId[] = ["fence", "ask", "profile"];
const PLACES: readonly AspectId[] = ["opening", "after_trouble", "late"];

/** “5 of 7 stops were on the right rein, though on those days only 40 % of the fences were met that way.” */
export function seenPhrase(pattern: Pattern, where: string, troubles: string): Phrase {
  const { on, off, of_outing, aspect } = pattern;
  if (of_outing) return { key: "pattern.seen_days", values: { on: on.troubles, on_met: on.met, off: off.troubles, off_met: off.met, where } };
  const share = Math.round((100 * pattern.chance.expected) / (on.troubles + off.troubles));
  const key = KINDS.includes(aspect) ? "pattern.seen_kind" : PLACES.includes(aspect) ? "pattern.seen_place" : "pattern.seen";
  return { key, values: { on: on.troubles, troubles, where, share } };
}

export function percent({ met, troubles }: Counts): number {
  return met === 0 ? 0 : Math.round((100 * troubles) / met);
}

const RARE = 10_000;

/** Once in how many records chance alone would do as much, in a round number. */
export function chancePhrase(p: number): Phrase {
  const n = 1 / p;
  if (n >= RARE) return { key: "pattern.chance_rare", values: {} };
  const step = 10 ** Math.max(0, Math.floor(Math.log10(n)) - 1);
  return { key: "pattern.chance", values: { n: Math.floor(n / step) * step } };
}
