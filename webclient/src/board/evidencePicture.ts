// Where each piece of evidence stands in the picture of a finding: time from left to right, clear attempts
// on the upper line, anything else on the lower, a mark's size by what it still weighs.

import type { EvidenceLine } from "./standing.ts";

export interface Dot {
  record_id: string;
  /** 0 at the oldest day shown, 1 at the day of the standing. */
  across: number;
  lane: "good" | "bad";
  /** 0.35 to 1: what the attempt still weighs, never so small that it cannot be seen. */
  size: number;
  /** How many marks share the very same place, counted from 0. */
  stack: number;
}

const DAY_MS = 86_400_000;
const LEAST_DAYS = 60;
const GOOD = new Set(["clear", "completed", "bold", "willing", "clean"]);
const OF_TWO_LANES = new Set(["attempt", "event_result"]);

/** Whether a picture of good above and not good below can be drawn: of a canter or a test nobody can say so. */
export function canBeDrawn(evidence: readonly EvidenceLine[]): boolean {
  return evidence.length > 1 && evidence.every(({ kind }) => OF_TWO_LANES.has(kind));
}

export function daysBetween(from: string, to: string): number {
  return Math.round((Date.parse(to) - Date.parse(from)) / DAY_MS);
}

/** Days the picture spans, ending at `asOf`: from the oldest evidence, but never fewer than 60. */
export function spanDays(evidence: readonly EvidenceLine[], asOf: string): number {
  return evidence.reduce((most, line) => Math.max(most, daysBetween(line.local_date, asOf)), LEAST_DAYS);
}

export function dots(evidence: readonly EvidenceLine[], asOf: string): Dot[] {
  const span = spanDays(evidence, asOf);
  const taken = new Map<string, number>();
  return evidence.map((line) => {
    const lane = line.outcome === null || GOOD.has(line.outcome) ? "good" : "bad";
    const place = `${line.local_date} ${lane}`;
    const stack = taken.get(place) ?? 0;
    taken.set(place, stack + 1);
    const across = Math.min(1, Math.max(0, 1 - daysBetween(line.local_date, asOf) / span));
    const size = 0.35 + 0.65 * Math.min(1, Math.max(0, line.weight ?? 1));
    return { record_id: line.record_id, across, lane, size, stack };
  });
}
