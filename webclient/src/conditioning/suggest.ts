// Which step to offer: the last one ridden again, or one back where its recovery was slow. Growing is the
// rider's and the coach's choice, so nothing here ever offers a longer one by itself.

import type { IntervalSet } from "../entries/bodies.ts";
import type { Normals } from "./gates.ts";
import { recovery, type RecoveryState } from "./recovery.ts";
import type { IntervalStep } from "./steps.ts";

/** How the recovery of a set went; null when no rate was taken. */
export function recoveryState(set: IntervalSet, normals: Normals): RecoveryState | null {
  return set.recoveries.length === 0 ? null : recovery(set.recoveries, normals).state;
}

/** The place among `steps` to offer, given the last set and how its recovery went. */
export function offered(steps: readonly IntervalStep[], last: IntervalSet | null, state: RecoveryState | null): number {
  const longest_s = Math.max(0, ...(last?.intervals ?? []).map(({ work_s }) => work_s));
  const same = steps.findLastIndex(({ work_min }) => 60 * work_min <= longest_s);
  const back = state === "slow" || state === "call_vet" ? 1 : 0;
  return Math.max(0, same - back);
}
