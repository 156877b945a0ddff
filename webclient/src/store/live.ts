// Queries that a screen keeps on its face: run again whenever what they read has changed, in any tab.

import { liveQuery } from "dexie";
import { useEffect, useState } from "preact/hooks";

import { same } from "../entries/same.ts";
import { openDb } from "./place.ts";

/** The newest result of `query`; undefined while it is still loading. Runs anew when `needs` change. */
export function useLive<T>(query: () => Promise<T>, needs: unknown[]): T | undefined {
  const [found, setFound] = useState<{ needs: unknown[]; value: T } | undefined>(undefined);
  const db = openDb.value;
  useEffect(() => {
    if (!db) return;
    const running = liveQuery(query).subscribe({
      next: (value) => setFound((old) => (old && old.needs === needs && same(old.value, value) ? old : { needs, value })),
      error: (error) => console.error("a query failed", error),
    });
    return () => running.unsubscribe();
  }, [db, ...needs]);
  return found && same(found.needs, needs) ? found.value : undefined;
}
