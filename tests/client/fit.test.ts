// The vectors that Python wrote and runs too: how fences fit an invented ladder, and the study's cautions.

import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { describe, it } from "node:test";
import { fenceCautions } from "../../webclient/src/trade/cautions.ts";
import { fit, type LevelFit } from "../../webclient/src/trade/fit.ts";

const { rulebook, cases, cautions } = JSON.parse(readFileSync(new URL("../../fixtures/contract/fit.json", import.meta.url), "utf8"));

const idOf = (level: LevelFit | null) => level?.level.id ?? null;

describe("fit", () => {
  assert.ok(cases.length >= 25);
  for (const { name, fence, expected } of cases) {
    it(name, () => {
      const found = fit(fence, rulebook);
      const at = (id: string) => found.levels.find(({ level }) => level.id === id)!;
      assert.deepEqual(Object.fromEntries(found.levels.map((each) => [each.level.id, each.verdict])), expected.verdicts);
      assert.deepEqual([idOf(found.lowest_admitting), idOf(found.lowest_possible)], [expected.lowest_admitting, expected.lowest_possible]);
      const { part, dimension, limit, margin_cm } = found.binding ?? {};
      assert.deepEqual(found.binding && { part, dimension, limit, margin_cm }, expected.binding);
      for (const [id, margins] of Object.entries(expected.margins)) {
        const compared = at(id).checks.filter((check) => check.margin_cm !== null);
        assert.deepEqual(Object.fromEntries(compared.map((check) => [check.limit, check.margin_cm])), margins);
      }
      for (const [id, asks] of Object.entries(expected.asks_later)) {
        assert.deepEqual(Object.fromEntries(at(id).asks_later.map(({ ask, level }) => [ask, level.id])), asks);
      }
      assert.deepEqual(found.asks_not_stated, expected.asks_not_stated);
    });
  }
});

describe("cautions", () => {
  assert.ok(cautions.length >= 9);
  for (const { fence, codes } of cautions) {
    it(`${fence.profile}: ${codes.join(", ") || "none"}`, () => assert.deepEqual(fenceCautions(fence), codes));
  }
});
