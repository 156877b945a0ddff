// The numbers of a bar as a person reads and types them: shares in per cent, the others as they are.

import type { BarChanged } from "../../board/standing.ts";
import { decimal } from "../../words/decimal.ts";

const SHARES = new Set(["bound", "confidence", "pool_mean", "repeat_discount"]);

export const isShare = (quantity: string): boolean => SHARES.has(quantity) || quantity.endsWith("_fraction");

/** Without its unit: 0.79 of a share is “79”. */
export function typedNumber(quantity: string, value: number): string {
  return decimal(Number((isShare(quantity) ? 100 * value : value).toFixed(2)));
}

export function shownNumber(quantity: string, value: number): string {
  return typedNumber(quantity, value) + (isShare(quantity) ? " %" : "");
}

/** The number in its own unit; null where it is none. */
export function readNumber(quantity: string, text: string): number | null {
  const plain = text.replace("%", "").trim().replace(",", ".").replace("−", "-");
  if (!/^-?\d+(\.\d+)?$/.test(plain)) return null;
  return isShare(quantity) ? Number((Number(plain) / 100).toFixed(4)) : Number(plain);
}

/** The last change of each number: the one that counts. */
export function inForce(changes: readonly BarChanged[]): BarChanged[] {
  return [...new Map(changes.map((each) => [each.quantity, each])).values()].filter((each) => each.value !== null);
}

interface Kept {
  body: { requirement_id: string; quantity: string };
  number: number | null;
  recorded_at: string;
  record_id: string;
}

/** As the server applies them, newest first; `replaced` by a later change of the same number. */
export function newestFirst<K extends Kept>(records: readonly K[]): (K & { replaced: boolean })[] {
  const order = (one: Kept, other: Kept): number =>
    (other.number ?? Infinity) - (one.number ?? Infinity) || (one.recorded_at < other.recorded_at ? 1 : -1);
  const seen = new Set<string>();
  return [...records].sort(order).map((each) => {
    const what = `${each.body.requirement_id} ${each.body.quantity}`;
    const replaced = seen.has(what);
    seen.add(what);
    return { ...each, replaced };
  });
}
