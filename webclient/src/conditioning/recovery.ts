// Recovery after work, judged as the server judges it: the twin is server/fieldtally/trade/recovery.py, and
// both run fixtures/contract/recovery.json. No gate here clears a horse; the vet decides.

import type { RecoveryCheck } from "../entries/bodies.ts";
import { aboveZero, notBelowZero } from "../pace/badInput.ts";
import { AFTER_WORK, answer, type Answer, NEXT_SET, type Normals, ownGates, STRICT } from "./gates.ts";

/** not_known: nothing was measured when it matters. */
export type RecoveryState = "call_vet" | "slow" | "as_expected" | "not_known";

export interface Recovery {
  state: RecoveryState;
  answers: Answer[];
}

/** The checks in order of time, or BadInput at the first that cannot be. */
export function checked(checks: readonly RecoveryCheck[]): RecoveryCheck[] {
  checks.forEach((check, n) => {
    notBelowZero(`checks[${n}].minute`, check.minute);
    for (const what of ["heart_rate_bpm", "respiration_bpm"] as const) {
      if (check[what] !== null) aboveZero(`checks[${n}].${what}`, check[what]);
    }
  });
  aboveZero("checks", checks.length);
  return [...checks].sort((one, other) => one.minute - other.minute);
}

/** Breathing faster than the heart beats: cool the horse and call the vet (from memory). */
export function inverted(checks: readonly RecoveryCheck[]): boolean {
  return checks.some(({ heart_rate_bpm: heart, respiration_bpm: breath }) => heart !== null && breath !== null && breath > heart);
}

function stateOf(answers: readonly Answer[], checks: readonly RecoveryCheck[]): RecoveryState {
  if (inverted(checks)) return "call_vet";
  const telling = answers.filter(({ gate }) => !STRICT.includes(gate.id)).map(({ state }) => state);
  if (telling.includes("missed")) return "slow";
  return telling.includes("passed") ? "as_expected" : "not_known";
}

/** The recovery after the last canter. `rigorous`: interval or fast work, which is given longer to come back
 * to normal than light work. */
export function recovery(checks: readonly RecoveryCheck[], normals: Normals, rigorous = true): Recovery {
  const ordered = checked(checks);
  const answers = [...ownGates(normals, rigorous), ...AFTER_WORK].map((gate) => answer(gate, ordered));
  return { state: stateOf(answers, ordered), answers };
}

/** Whether the rates now allow the next canter by the published gate; never a reason to go on alone. */
export function nextSet(heart_rate_bpm: number | null, respiration_bpm: number | null): Recovery {
  const now = checked([{ minute: 0, heart_rate_bpm, respiration_bpm }]);
  const answers = NEXT_SET.map((gate) => answer(gate, now));
  const state = stateOf(answers, now);
  const half = state === "as_expected" && answers.some((each) => each.state === "not_measured");
  return { state: half ? "not_known" : state, answers };
}
