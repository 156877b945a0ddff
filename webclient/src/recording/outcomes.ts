// Which outcomes can be tapped at a fence, and what each means for what comes next.

import { FALLS, STOPS } from "../entries/bodies.ts";
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

/** Everything but clear, commonest first, falls apart from what is tapped often. */
const BESIDE_CLEAR: readonly Outcome[] = [
  "refusal", "run_out", "circle", "knockdown", "missed_flag", "retired", "rider_fall", "horse_fall",
];

export function outcomesBesideClear(showJump: boolean): Outcome[] {
  return BESIDE_CLEAR.filter((outcome) => showJump || outcome !== "knockdown");
}
