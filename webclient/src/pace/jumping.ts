// Jumping penalties of a round from its counts, by what the rulebook states. Stops of show jumping add up
// over the round, whatever the fence (server/fieldtally/trade/show_jumping_score.py scores fault by fault).

import { type Level, value } from "./levels.ts";

export interface Round {
  knockdowns: number;
  refusals: number;
  rider_fall: boolean;
  horse_fall: boolean;
}

/** unstated: the rulebook gives no price for something that happened, so no sum is shown. */
export type RoundScore = { is: "penalties"; penalties: number } | { is: "eliminated" } | { is: "unstated" };

const UNSTATED: RoundScore = { is: "unstated" };

function stopPenalties(refusals: number, level: Level | null): number | null {
  const each = [value(level, "show_jumping", "refusal_first_penalties"), value(level, "show_jumping", "refusal_second_penalties")];
  const counted = each.slice(0, refusals);
  if (refusals > each.length || counted.includes(null)) return null;
  return counted.reduce<number>((sum, one) => sum + (one ?? 0), 0);
}

function eliminated(round: Round, level: Level | null): boolean {
  const reached = (count: number, quantity: string): boolean => {
    const limit = value(level, "show_jumping", quantity);
    return limit !== null && count >= limit;
  };
  return (
    reached(round.refusals, "stops_that_eliminate") ||
    reached(round.rider_fall ? 1 : 0, "rider_falls_that_eliminate") ||
    reached(round.horse_fall ? 1 : 0, "horse_falls_that_eliminate")
  );
}

/** Penalties at the obstacles, without time. */
export function roundScore(round: Round, level: Level | null): RoundScore {
  if (eliminated(round, level)) return { is: "eliminated" };
  if (round.rider_fall || round.horse_fall) return UNSTATED;
  const knockdown = value(level, "show_jumping", "knockdown_penalties");
  const stops = stopPenalties(round.refusals, level);
  if (stops === null || (knockdown === null && round.knockdowns > 0)) return UNSTATED;
  const penalties = stops + round.knockdowns * (knockdown ?? 0);
  const retires = value(level, "show_jumping", "jump_penalties_that_retire");
  return retires !== null && penalties >= retires ? { is: "eliminated" } : { is: "penalties", penalties };
}
