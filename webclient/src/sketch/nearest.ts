// Which fences are nearest to where the phone is. Those whose place nobody knows come last, in riding order.

import { offsetOf } from "../location/earth.ts";
import type { Position } from "../recording/position.ts";
import { layOut } from "./layout.ts";

interface Ground {
  latitude: number;
  longitude: number;
}

/** Metres from `me` to each fence whose place on the ground is known. */
export function metresTo(fences: readonly { record_id: string; body: Position }[], me: Ground): Map<string, number> {
  const { spots, middle } = layOut(fences);
  if (!middle) return new Map();
  const { x, y } = offsetOf(middle, me);
  return new Map([...spots].map(([id, spot]) => [id, Math.hypot(spot.x - x, spot.y - y)]));
}

export function nearestFirst<F extends { record_id: string }>(fences: readonly F[], metres: ReadonlyMap<string, number>): F[] {
  return [...fences].sort((one, other) => away(metres, one) - away(metres, other));
}

const away = (metres: ReadonlyMap<string, number>, { record_id }: { record_id: string }): number => metres.get(record_id) ?? Number.MAX_VALUE;
