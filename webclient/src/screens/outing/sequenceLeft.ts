// Which combination was left in the middle: choosing another fence ends its sequence.

import { openSequence } from "../../recording/combination.ts";
import type { OutingView } from "./useOuting.ts";

interface Standing {
  outing_id: string;
  fence_id: string;
}

let last: Standing | null = null;
let left: string | null = null;

/** To be told of every fence that is chosen; null (the list) ends nothing yet. */
export function rememberLeaving(view: OutingView, fence_id: string | null): void {
  if (fence_id === null) return;
  const outing_id = view.outing.record_id;
  if (last && last.outing_id === outing_id && last.fence_id !== fence_id) {
    left = openSequence(last.fence_id, view.attempts, Date.now()) ?? left;
  }
  last = { outing_id, fence_id };
}

export const sequenceLeft = (): string | null => left;
