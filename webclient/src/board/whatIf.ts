// Questions to the server about one level: what if. Nothing is stored by asking.

import { makeWire } from "../sync/wire.ts";
import type { FindingState, Standing } from "./standing.ts";

export interface Question {
  as_of?: string | null;
  without_outings?: string[];
  more?: { requirement_id: string; clear: number; outings: number }[];
  bar_changes?: unknown[];
}

export interface Comparison {
  before: Standing;
  after: Standing;
  changes: { requirement_id: string; title: string; before: FindingState | null; after: FindingState | null }[];
}

/** The comparison, or in words why there is none; `offline` is said by the screen. */
export type Answer = { comparison: Comparison } | { trouble: "offline" | string };

const wire = makeWire();

export async function askWhatIf(logbookId: string, horseId: string, levelId: string, question: Question): Promise<Answer> {
  const reply = await wire.post<Comparison>(`/api/logbooks/${logbookId}/horses/${horseId}/levels/${levelId}/what-if`, question);
  if (reply.kind === "ok") return { comparison: reply.data };
  if (reply.kind === "offline") return { trouble: "offline" };
  return { trouble: [reply.error.message, reply.error.fix].filter(Boolean).join(" ") };
}
