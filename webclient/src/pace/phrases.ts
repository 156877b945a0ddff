// A pace as people read it: “412 ± 4 m/min, 8 slow”. These functions choose the phrase and round its
// numbers; the words themselves are in words/en-GB/pace.json. The twin is trade/pace_words.py.

import { decimal } from "../words/decimal.ts";
import type { Lateness } from "./lateness.ts";
import type { Pace } from "./speed.ts";

/** A key of the words file with the values it wants. */
export interface Phrase {
  key: string;
  values: Record<string, string | number>;
}

/** To the nearest whole number, halves up, as the server rounds. */
export function rounded(value: number): number {
  return Math.floor(value + 0.5);
}

/** The shown ±: one standard uncertainty in m/min, never shown as nothing. */
export function plusMinus(pace: Pace): number {
  return Math.max(1, rounded(pace.speed_u_mpm));
}

/** “412 ± 4 m/min, 8 slow”: the difference is that of the two speeds as shown. */
export function headline(pace: Pace, late: Lateness | null): Phrase {
  const values = { speed: rounded(pace.speed_mpm), plus_minus: plusMinus(pace) };
  if (late === null) return { key: "pace.speed", values };
  const slow = rounded(late.target_speed_mpm) - values.speed;
  if (slow === 0) return { key: "pace.speed_on_target", values };
  return { key: slow > 0 ? "pace.speed_slow" : "pace.speed_fast", values: { ...values, by: Math.abs(slow) } };
}

/** Halves away from zero, one decimal, always shown: 8.0, 1.2. */
export function tenths(value: number): string {
  return decimal((rounded(Math.abs(value) * 10) / 10).toFixed(1));
}

/** “1.2 s late”, “0.0 s” with neither early nor late. */
export function earlyOrLate(value: number, unit: "seconds" | "metres"): Phrase {
  const shown = tenths(value);
  const side = rounded(Math.abs(value) * 10) === 0 ? "level" : value > 0 ? "late" : "early";
  return { key: `pace.${unit}_${side}`, values: { value: shown } };
}

/** What the timing can tell, in one plain sentence. */
export function verdict(late: Lateness): Phrase {
  const by = Math.abs(rounded(late.slow_mpm));
  return { key: `pace.verdict_${late.verdict}`, values: { by, target: rounded(late.target_speed_mpm) } };
}
