// Values put right from the rulebook in somebody's hand: reading what was typed, and whether it can be meant.
// Twin of server/fieldtally/trade/correction.py: same vectors (fixtures/contract/correction.json).

import type { RulebookValue } from "../entries/bodies.ts";
import type { Rulebook } from "../pace/levels.ts";
import { parseDistance, parseHeight } from "../units/lengths.ts";

/** The number in the quantity's own unit; null where it is none. Whether it can be meant, `troubleWith` says. */
export function readCorrection(text: string, unit: string): number | null {
  if (unit === "cm") return parseHeight(text, 0, Infinity);
  if (unit === "m") return parseDistance(text);
  const plain = text.trim().replace(",", ".");
  return /^\d+(\.\d+)?$/.test(plain) ? Number(plain) : null;
}

export type Trouble = "other_rulebook" | "no_level" | "no_quantity" | "out_of_range" | "not_whole";

/** Why this correction changes nothing in this rulebook; null where it does. */
export function troubleWith(rulebook: Rulebook, { rulebook_id, level_id, phase, quantity, value }: RulebookValue): Trouble | null {
  if (rulebook_id !== rulebook.id) return "other_rulebook";
  if (!rulebook.levels.some((level) => level.id === level_id)) return "no_level";
  if (!rulebook.quantities) return null;
  const known = rulebook.quantities[phase]?.[quantity];
  if (!known) return "no_quantity";
  if (value === null) return null;
  if (value < known.least || value > known.most) return "out_of_range";
  return known.whole && !Number.isInteger(value) ? "not_whole" : null;
}

interface Kept {
  body: RulebookValue;
  number: number | null;
  recorded_at: string;
  record_id: string;
}

/** The bodies as the server applies them: by number, those it does not have yet last. */
export function newestLast(records: readonly Kept[]): RulebookValue[] {
  const order = (one: Kept, other: Kept): number =>
    (one.number ?? Infinity) - (other.number ?? Infinity) || (one.recorded_at < other.recorded_at ? -1 : 1);
  return [...records].sort(order).map((each) => each.body);
}
