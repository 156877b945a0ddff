// Merges several edits of one body, part by part. A part is one field, or a group of fields that state one
// fact together. Text is never merged: a note is one part. Twin of book/merge.py.

import { TOGETHER } from "./bodies.ts";
import { same } from "./same.ts";

export type Plain = { [key: string]: unknown };

export interface Merged {
  /** Settles every dispute in favour of the last edit. */
  body: Plain;
  disputed: string[];
  /** Place of an edit that has a say in a dispute -> what it says there. */
  own: Map<number, Plain>;
}

/** Merges complete bodies of one kind, the edit of the highest number last. `bases`: their nearest common ancestors. */
export function merge(kind: string, bases: Plain[], edits: Plain[]): Merged {
  const merged: Merged = { body: {}, disputed: [], own: new Map() };
  for (const part of partsOf(kind, edits)) mergePart(merged, part, bases, edits);
  return merged;
}

/** The whole body if the edit at `place` wins every dispute it takes part in. */
export function sideOf(merged: Merged, place: number): Plain {
  return { ...merged.body, ...merged.own.get(place) };
}

function partsOf(kind: string, bodies: Plain[]): (readonly string[])[] {
  const groups = TOGETHER[kind] ?? [];
  const grouped = new Set(groups.flat());
  const single = new Set(bodies.flatMap(Object.keys).filter((name) => !grouped.has(name)));
  return [...groups, ...[...single].sort().map((name) => [name])];
}

function mergePart(merged: Merged, part: readonly string[], bases: Plain[], edits: Plain[]): void {
  const before = agreed(bases.map((base) => pick(part, base)));
  const said = edits.map((edit, place) => ({ place, values: pick(part, edit) }));
  const changed = said.filter(({ values }) => before === null || !same(values, before));
  Object.assign(merged.body, changed.length ? changed.at(-1)!.values : before);
  const first = changed[0]?.values ?? {};
  if (changed.every(({ values }) => same(values, first))) return;
  merged.disputed.push(...part.filter((name) => changed.some(({ values }) => !same(values[name], first[name]))));
  for (const { place, values } of changed) merged.own.set(place, { ...merged.own.get(place), ...values });
}

function pick(part: readonly string[], body: Plain): Plain {
  return Object.fromEntries(part.filter((name) => Object.hasOwn(body, name)).map((name) => [name, body[name]]));
}

function agreed(values: Plain[]): Plain | null {
  return values.length && values.every((each) => same(each, values[0])) ? values[0]! : null;
}
