// The published gates of recovery. Fixed numbers are weak: how fast a horse recovers hangs on its own resting
// rate (Animals 10(1):120, 2020), so the horse's own normals come first where they are known.

import type { RecoveryCheck } from "../entries/bodies.ts";
import { aboveZero } from "../pace/badInput.ts";

export type Rate = "heart_rate_bpm" | "respiration_bpm";

/** By `minute` after the work the rate should be at most `most`, or under it where `under`. `from` names the
 * source: its words are `conditioning.from_…`. All are secondary sources. */
export interface Gate {
  id: string;
  what: Rate;
  minute: number;
  most: number;
  under: boolean;
  from: "talk_1998" | "supplier" | "provet";
}

/** The next canter of a set may start at these. */
export const NEXT_SET: readonly Gate[] = [
  { id: "next_heart", what: "heart_rate_bpm", minute: 0, most: 120, under: true, from: "talk_1998" },
  { id: "next_respiration", what: "respiration_bpm", minute: 0, most: 80, under: true, from: "talk_1998" },
];

/** After the last canter. */
export const AFTER_WORK: readonly Gate[] = [
  { id: "heart_2", what: "heart_rate_bpm", minute: 2, most: 100, under: false, from: "supplier" },
  { id: "heart_10", what: "heart_rate_bpm", minute: 10, most: 80, under: false, from: "talk_1998" },
  { id: "respiration_10", what: "respiration_bpm", minute: 10, most: 40, under: false, from: "talk_1998" },
  { id: "heart_10_fit", what: "heart_rate_bpm", minute: 10, most: 60, under: true, from: "supplier" },
];

/** Missing these says "not yet fit", not "go back a step". */
export const STRICT: readonly string[] = ["heart_2", "heart_10_fit"];

const OWN_NORMAL_WITHIN = 0.15;
const LIGHT_BY_MIN = 15;
const RIGOROUS_BY_MIN = 45;

/** The horse's own rates at rest, in beats and breaths a minute; null where not known. */
export interface Normals {
  resting_heart_rate_bpm: number | null;
  resting_respiration_bpm: number | null;
}

/** Gates from the horse's own normals: within 15 % of each, in the time its work allows. */
export function ownGates(normals: Normals, rigorous: boolean): Gate[] {
  const minute = rigorous ? RIGOROUS_BY_MIN : LIGHT_BY_MIN;
  return (["heart_rate_bpm", "respiration_bpm"] as const).flatMap((what) => {
    const normal = normals[`resting_${what}`];
    if (normal === null) return [];
    const most = aboveZero(`resting_${what}`, normal) * (1 + OWN_NORMAL_WITHIN);
    return [{ id: `own_${what}`, what, minute, most, under: false, from: "provet" as const }];
  });
}

export function holds(gate: Gate, rate: number): boolean {
  return gate.under ? rate < gate.most : rate <= gate.most;
}

export type GateState = "passed" | "missed" | "not_measured";

/** One gate against the checks, with the check that decided it. */
export interface Answer {
  gate: Gate;
  state: GateState;
  minute: number | null;
  rate: number | null;
}

/** A rate low enough by the gate's minute passes it; one still too high at or after it misses it. `checks` in
 * order of time. */
export function answer(gate: Gate, checks: readonly RecoveryCheck[]): Answer {
  const taken = checks.flatMap((check) => (check[gate.what] === null ? [] : [{ minute: check.minute, rate: check[gate.what]! }]));
  const late = taken.find(({ minute, rate }) => minute >= gate.minute && !holds(gate, rate));
  if (late) return { gate, state: "missed", ...late };
  const good = taken.filter(({ minute, rate }) => minute <= gate.minute && holds(gate, rate)).at(-1);
  return good ? { gate, state: "passed", ...good } : { gate, state: "not_measured", minute: null, rate: null };
}
