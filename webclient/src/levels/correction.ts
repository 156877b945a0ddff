// Reads the number of a correction as people write it: decimal comma or point, lengths in either unit.

import { parseDistance, parseHeight } from "../units/lengths.ts";

/** The number in the quantity's own unit; null where it is none. */
export function readCorrection(text: string, unit: string): number | null {
  if (unit === "cm") return parseHeight(text);
  if (unit === "m") return parseDistance(text);
  const plain = text.trim().replace(",", ".");
  return /^\d+(\.\d+)?$/.test(plain) ? Number(plain) : null;
}
