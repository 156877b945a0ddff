// Which outcomes can be tapped at a fence, and what each means for what comes next.

import { FALLS, OUTCOMES, STOPS } from "../entries/bodies.ts";
import type { Activity, Fence, Outcome } from "../entries/bodies.ts";

const among = (words: readonly string[], word: string): boolean => words.includes(word);

/** The pair was asked and did not go. */
export const isStop = (outcome: Outcome): boolean => among(STOPS, outcome);

export const isFall = (outcome: Outcome): boolean => among(FALLS, outcome);

/** Whether the pair landed on the far side and can ride on to the next element. */
export const wentOver = (outcome: Outcome): boolean => !isStop(outcome) && !isFall(outcome) && outcome !== "retired";

/** Poles can only fall where there are poles. */
export function isShowJump(fence: Pick<Fence, "profile" | "asks">, activity: Activity): boolean {
  return activity === "jumping_school" || fence.profile === "cross_pole" || fence.asks.includes("show_jump");
}

/** Everything but clear, in the order in which it is met in the field: commonest first, falls apart. */
export function outcomesBesideClear(showJump: boolean): Outcome[] {
  return OUTCOMES.filter((outcome) => outcome !== "clear" && (showJump || outcome !== "knockdown"));
}
