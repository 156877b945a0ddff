// Names and numbers of recording in the person's words.

import type { Attempt, Fence } from "../../entries/bodies.ts";
import { civilDate } from "../../entries/entry.ts";
import { everythingAsked } from "../../recording/fenceList.ts";
import { DIMENSIONS, firstDimensions } from "../../recording/dimensions.ts";
import { type Manner, saidWords, type Side } from "../../recording/manner.ts";
import type { Tally } from "../../recording/tally.ts";
import { showHeight } from "../../units/index.ts";
import { inside, say, t } from "../../words/index.ts";

/** The words files keep the paces of a presentation apart from the stopwatch's. */
export const sideKey = (side: Side): string => (side === "pace" ? "gait" : side);

export const sideWord = (side: Side, word: string): string => say({ key: `${sideKey(side)}.${word}` });

/** "Clear, 3 Birch brush", "Refusal, 9 Roofed double B". */
export function attemptName(attempt: Attempt, fence: Fence | undefined): string {
  return t("attempt.name", { outcome: t(`outcome.${attempt.outcome}`), fence: placeName(attempt, fence) });
}

export function placeName(attempt: Pick<Attempt, "element">, fence: Fence | undefined): string {
  const label = fence?.label ?? t("attempt.fence_gone");
  return attempt.element ? `${label} ${attempt.element}` : label;
}

/** Whether the outing is of this day: only then does anything read "today". */
export const isToday = ({ outing }: { outing: { body: { date: string } } }): boolean => outing.body.date === civilDate(new Date());

/** "4 clear, 1 refusal", or that there is nothing yet. */
export function tallyWords(tally: Tally): string {
  if (!tally.length) return t("outing.tally_none");
  return tally.map(({ outcome, count }) => t("outing.tally_part", { count, outcome: inside(t(`outcome.${outcome}`)) })).join(", ");
}

/** "Log · 88 cm high, 60 cm top spread": what kind of fence it is and how big. */
export function fenceFacts(fence: Fence): string {
  if (fence.elements.length > 1) return combinationFacts(fence);
  const sizes = DIMENSIONS.flatMap((name) => (fence[name] === null ? [] : [t(`fence.size.${name}`, { size: showHeight(fence[name]) })]));
  return [t(`profile.${fence.profile}`), sizes.join(", ")].filter(Boolean).join(" · ");
}

/** "Combination of 2 · A 88 cm, B 86 cm". */
function combinationFacts(fence: Fence): string {
  const sizes = fence.elements.flatMap((element) => {
    const main = firstDimensions(element.profile).find((name) => element[name] !== null);
    return main ? [`${element.letter} ${showHeight(element[main]!)}`] : [];
  });
  return [t("fence.of_elements", { n: fence.elements.length }), sizes.join(", ")].filter(Boolean).join(" · ");
}

/** "Log · 88 cm high": the one measure that says most, for a line of a list. */
export function fenceBrief(fence: Fence): string {
  const main = firstDimensions(fence.profile).find((name) => fence[name] !== null);
  return fenceFacts(main ? { ...fence, ...NO_SIZES, [main]: fence[main] } : fence);
}

const NO_SIZES = Object.fromEntries(DIMENSIONS.map((name) => [name, null]));

/** Words that a search finds a fence by, beside its label. */
export function fenceWords(fence: Fence): string {
  const profiles = [fence, ...fence.elements].map((part) => t(`profile.${part.profile}`));
  return [...profiles, ...[...everythingAsked(fence)].map((ask) => t(`ask.${ask}`))].join(" ");
}

/** "Bold · Left rein · Uphill · Canter", or that nothing was said. */
export function mannerWords({ presentation, attitude }: Manner): string {
  const sides = saidWords(presentation).map(({ side, word }) => sideWord(side, word));
  const words = attitude ? [t(`attitude.${attitude}`), ...sides] : sides;
  return words.length ? words.join(" · ") : t("attempt.manner_none");
}
