// Queries that a screen keeps on its face: run again whenever something was stored, in any tab.

import { useEffect, useState } from "preact/hooks";

import { same } from "../entries/same.ts";
import { followChanges } from "./changes.ts";
import type { PhoneDb } from "./db.ts";
import { openDb } from "./place.ts";

/** The newest result of `query`; undefined while it is still loading. Runs anew when what `needs` say
 * changes; needs are plain data, compared by what they say, so that a screen may write them in place. */
export function useLive<T>(query: () => Promise<T>, needs: unknown[]): T | undefined {
  const [found, setFound] = useState<{ key: string; value: T } | undefined>(undefined);
  const db = openDb.value;
  const key = JSON.stringify(needs);
  useEffect(() => {
    if (!db) return;
    return keepAsking(db, query, (value) => setFound((old) => (old && old.key === key && same(old.value, value) ? old : { key, value })));
  }, [db, key]);
  return found?.key === key ? found.value : undefined;
}

// what is half typed and where a sync stands are nobody's list
const UNSEEN = ["drafts", "meta"];

const AGAIN_MS = 1000;
const TRIES = 5;

/** Asks now and after every change, never twice at once, until the returned function is called. A query that fails,
 * as when the connection is just being opened anew, is asked again after a second, a few times. */
export function keepAsking<T>(db: PhoneDb, query: () => Promise<T>, tell: (value: T) => void): () => void {
  let stopped = false;
  let state: "idle" | "asking" | "outdated" = "idle";
  let failures = 0;
  const failed = (error: unknown): void => {
    console.error("a query failed", error);
    if (++failures < TRIES) setTimeout(() => !stopped && void ask(), AGAIN_MS);
  };
  const ask = async () => {
    if (state !== "idle") return void (state = "outdated");
    do {
      state = "asking";
      const value = await query().then((found) => ({ found }), failed);
      if (value) failures = 0;
      if (value && !stopped) tell(value.found);
    } while ((state as string) === "outdated" && !stopped);
    state = "idle";
  };
  const unfollow = followChanges(db.name, (tables) => tables.some((table) => !UNSEEN.includes(table)) && void ask());
  void ask();
  return () => {
    stopped = true;
    unfollow();
  };
}
