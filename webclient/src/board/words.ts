// Which of a coach's words on a level stands: the latest one.

import type { Word } from "../entries/bodies.ts";

interface Given {
  body: Word;
  recorded_at: string;
  number: number | null;
}

/** The newest word on one level; one not yet numbered is the newest of all. */
export function newestWord<W extends Given>(words: readonly W[], rulebookId: string, levelId: string): W | undefined {
  const on = words.filter(({ body }) => body.rulebook_id === rulebookId && body.level_id === levelId);
  return on.sort(byNumber).at(-1);
}

function byNumber(one: Given, other: Given): number {
  const [a, b] = [one.number ?? Infinity, other.number ?? Infinity];
  return a === b ? one.recorded_at.localeCompare(other.recorded_at) : a - b;
}
