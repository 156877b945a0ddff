// The fold against the vectors that Python runs too, in the order given, reversed and shuffled.

import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { test } from "node:test";

import { type Foldable, type Folded, foldRecord } from "../../webclient/src/entries/fold.ts";

interface Case {
  name: string;
  entries: Foldable[];
  records: Record<string, Record<string, unknown>>;
}

const file = new URL("../../fixtures/contract/fold.json", import.meta.url);
const { cases } = JSON.parse(readFileSync(file, "utf8")) as { cases: Case[] };

function folded(entries: Foldable[]): Record<string, Record<string, unknown>> {
  const ids = [...new Set(entries.map((entry) => entry.record_id))];
  return Object.fromEntries(ids.map((id) => [id, told(foldRecord(entries.filter((entry) => entry.record_id === id)))]));
}

function told({ record_id: _, recorded_at: __, author_name: ___, ...rest }: Folded): Record<string, unknown> {
  return rest as Record<string, unknown>;
}

function shuffled<T>(values: T[], seed: number): T[] {
  const keyed = values.map((value, place) => ({ value, key: Math.sin(seed * 97 + place * 31) }));
  return keyed.sort((one, other) => one.key - other.key).map(({ value }) => value);
}

test("there are vectors", () => assert.ok(cases.length >= 20));

for (const { name, entries, records } of cases) {
  test(`fold: ${name}`, () => {
    assert.deepEqual(folded(entries), records);
    assert.deepEqual(folded([...entries].reverse()), records);
    for (let seed = 1; seed <= 5; seed++) assert.deepEqual(folded(shuffled(entries, seed)), records);
  });
}
