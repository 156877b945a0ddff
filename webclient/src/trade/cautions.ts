// What went with falls of horses in a published study. Twin of server/fieldtally/trade/fence_cautions.py: same
// vectors (fixtures/contract/fit.json).

import { asksOf } from "../recording/asks.ts";
import type { FenceParts, Part } from "./fit.ts";

export type CautionCode = "wide_spread" | "drop_landing" | "water" | "angled";

const WIDE_FROM_CM = 200;

function ofPart(part: Part): CautionCode[] {
  const asks = asksOf(part);
  const wide = Math.max(part.spread_top_cm ?? 0, part.spread_base_cm ?? 0) >= WIDE_FROM_CM;
  const found: [CautionCode, unknown][] = [
    ["wide_spread", wide && !asks.includes("angled_line") && !asks.includes("corner")],
    ["drop_landing", part.drop_cm || asks.includes("drop")],
    ["water", asks.includes("water")],
    ["angled", asks.includes("angled_line")],
  ];
  return found.flatMap(([code, there]) => (there ? [code] : []));
}

/** Cautions for a fence and its elements, each once. */
export function fenceCautions(fence: FenceParts): CautionCode[] {
  return [...new Set([fence, ...fence.elements].flatMap(ofPart))];
}
