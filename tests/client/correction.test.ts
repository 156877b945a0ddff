// Corrections of single values: the vectors that Python runs too, on the ladder of the fit vectors.

import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { describe, it } from "node:test";
import type { RulebookValue } from "../../webclient/src/entries/bodies.ts";
import { newestLast, troubleWith } from "../../webclient/src/levels/correction.ts";
import { type Rulebook, valuesOf, withCorrections } from "../../webclient/src/pace/levels.ts";

const read = (name: string) => JSON.parse(readFileSync(new URL(`../../fixtures/contract/${name}.json`, import.meta.url), "utf8"));
const ladder: Rulebook = read("fit").rulebook;
const body = { rulebook_id: ladder.id, level_id: "low", phase: "cross_country", quantity: "drop_cm", value: 105, edition: "e", article: "a" } as const;

describe("corrections", () => {
  const cases = read("correction");
  assert.ok(cases.length >= 14);
  for (const { name, corrections, troubles, states } of cases) {
    it(name, () => {
      assert.deepEqual(corrections.map((each: RulebookValue) => troubleWith(ladder, each)), troubles);
      const book = withCorrections(ladder, corrections);
      for (const { level_id, phase, quantity, stated } of states) {
        const found = valuesOf(book.levels.find(({ id }) => id === level_id)!, phase)[quantity];
        const { value, unit, source, grade } = found ?? {};
        assert.deepEqual(found ? { value, unit, source, grade } : null, stated);
      }
    });
  }

  it("are taken as they are where the server sent no ranges", () => {
    const { quantities: _, ...bare } = ladder;
    assert.equal(troubleWith(bare, { ...body, value: 1.05 }), null);
    assert.equal(withCorrections(bare, [body]).levels[0]!.phases.cross_country!.drop_cm!.unit, "cm");
  });

  it("apply in the server's order, what it does not have yet last", () => {
    const kept = (value: number, number: number | null, recorded_at: string) => ({ body: { ...body, value }, number, recorded_at, record_id: String(value) });
    const records = [kept(4, null, "2026-02"), kept(3, null, "2026-01"), kept(2, 9, "2025-01"), kept(1, 8, "2027-01")];
    assert.deepEqual(newestLast(records).map((each) => each.value), [1, 2, 3, 4]);
  });
});
