// Questions to the server about one level: what if. Nothing is stored by asking.

import { makeWire } from "../sync/wire.ts";
import type { Finding, FindingState, Reason, Standing } from "./standing.ts";

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

/** One finding of the two standings, null where only the other bar has it. */
export interface Moved {
  requirement_id: string;
  title: string;
  before: Finding | null;
  after: Finding | null;
}

/** The comparison, or in words why there is none; `offline` is said by the screen. */
export type Answer = { comparison: Comparison } | { trouble: "offline" | string };

export async function askWhatIf(logbookId: string, horseId: string, levelId: string, question: Question): Promise<Answer> {
  const reply = await makeWire().post<Comparison>(`/api/logbooks/${logbookId}/horses/${horseId}/levels/${levelId}/what-if`, question);
  if (reply.kind === "ok") return { comparison: reply.data };
  if (reply.kind === "offline") return { trouble: "offline" };
  return { trouble: [reply.error.message, reply.error.fix].filter(Boolean).join(" ") };
}

/** Findings that would differ: another state first, then those of which less or more would be missing. */
export function moved({ before, after }: Pick<Comparison, "before" | "after">): Moved[] {
  const ids = new Set([...before.findings, ...after.findings].map((each) => each.requirement_id));
  const pairs = [...ids].map((id) => pairOf(id, before, after));
  const other = pairs.filter((each) => each.before?.state !== each.after?.state);
  const nearer = pairs.filter((each) => !other.includes(each) && textOf(each.before) !== textOf(each.after));
  return [...other, ...nearer];
}

/** All that is missing, as the finding says it: the first alone would make “to rebuild it” look less than what comes after. */
export function missingOf(finding: Finding | null): Reason[] {
  return finding?.needs ?? [];
}

const textOf = (finding: Finding | null) => missingOf(finding).map(({ text }) => text).join(" ");

function pairOf(requirement_id: string, before: Standing, after: Standing): Moved {
  const [then, now] = [after, before].map(({ findings }) => findings.find((each) => each.requirement_id === requirement_id) ?? null) as [Finding | null, Finding | null];
  return { requirement_id, title: (then ?? now)!.title, before: now, after: then };
}
