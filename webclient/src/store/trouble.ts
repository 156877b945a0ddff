// What can go wrong with the phone's storage, told apart by what the person can do about it.

import { signal } from "@preact/signals";

/** full: no room. lost: the connection broke. other: anything else. */
export type StoreTrouble = "full" | "lost" | "other";

/** Nothing was stored. `trouble` says why; screens show `store.not_saved_<trouble>`. */
export class NotSaved extends Error {
  trouble: StoreTrouble;

  constructor(trouble: StoreTrouble, cause: unknown) {
    super(`not saved: ${trouble}`, { cause });
    this.name = "NotSaved";
    this.trouble = trouble;
  }
}

/** Shown on every screen until something is saved again. */
export const notSaved = signal<StoreTrouble | null>(null);

const LOST = /connection.*lost|connection is closing|database connection is closed|internal error/i;

export function troubleOf(error: unknown): StoreTrouble {
  const names = chain(error).map((each) => each.name);
  const words = chain(error).map((each) => each.message ?? "").join(" ");
  if (names.includes("QuotaExceededError")) return "full";
  if (names.includes("InvalidStateError") || LOST.test(words)) return "lost";
  return "other";
}

// ours wrap in `cause` what the browser says
function chain(error: unknown): { name?: string; message?: string }[] {
  const found: { name?: string; message?: string }[] = [];
  for (let one = error as never; one && found.length < 5; one = one["cause"]) found.push(one);
  return found;
}
