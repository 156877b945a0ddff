// Queries that a screen keeps on its face: run again whenever what they read has changed, in any tab.

import { liveQuery } from "dexie";
import { useEffect, useState } from "preact/hooks";

import { same } from "../entries/same.ts";
import { openDb } from "./place.ts";

/** The newest result of `query`; undefined while it is still loading. Runs anew when what `needs` say
 * changes; needs are plain data, compared by what they say, so that a screen may write them in place. */
export function useLive<T>(query: () => Promise<T>, needs: unknown[]): T | undefined {
  const [found, setFound] = useState<{ key: string; value: T } | undefined>(undefined);
  const db = openDb.value;
  const key = JSON.stringify(needs);
  useEffect(() => {
    if (!db) return;
    const running = liveQuery(query).subscribe({
      next: (value) => setFound((old) => (old && old.key === key && same(old.value, value) ? old : { key, value })),
      error: (error) => console.error("a query failed", error),
    });
    return () => running.unsubscribe();
  }, [db, key]);
  return found?.key === key ? found.value : undefined;
}
