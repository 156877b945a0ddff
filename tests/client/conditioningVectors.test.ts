// The vectors that Python runs too: interval steps by course and level, recovery gate by gate.

import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { describe, it } from "node:test";
import { AFTER_WORK, NEXT_SET } from "../../webclient/src/conditioning/gates.ts";
import { nextSet, recovery } from "../../webclient/src/conditioning/recovery.ts";
import { courseMinutes, intervalSteps, stepsFor } from "../../webclient/src/conditioning/steps.ts";
import { BadInput } from "../../webclient/src/pace/badInput.ts";
import type { Level } from "../../webclient/src/pace/levels.ts";

const read = (name: string) => JSON.parse(readFileSync(new URL(`../../fixtures/contract/${name}.json`, import.meta.url), "utf8"));

function refusedOr<T>(work: () => T): T | { refused: string } {
  try {
    return work();
  } catch (error) {
    if (error instanceof BadInput) return { refused: error.field };
    throw error;
  }
}

function levelOf(stated: Record<string, number>): Level {
  const values = Object.entries(stated).map(([name, value]) => [name, { value, unit: "", source: "", grade: "" }]);
  return { id: "low", name: "Low", order: 1, phases: { cross_country: Object.fromEntries(values) } };
}

describe("interval steps", () => {
  const vectors = read("conditioning");
  it("are there", () => assert.ok(vectors.length >= 30));
  for (const { input, expected } of vectors) {
    it(JSON.stringify(input), () => {
      if (!input.level) return assert.deepEqual(refusedOr(() => ({ steps: intervalSteps(input.course_min, input.course_speed_mpm) })), expected);
      const level = levelOf(input.level);
      assert.deepEqual({ course_min: courseMinutes(level), steps: stepsFor(level) }, expected);
    });
  }
});

describe("recovery", () => {
  const { gates, vectors } = read("recovery");
  it("asks the published gates", () => {
    const asked = [...NEXT_SET, ...AFTER_WORK].map(({ id, what, minute, most, under }) => [id, what, minute, most, under]);
    assert.deepEqual(asked, gates);
  });
  it("has its vectors", () => assert.ok(vectors.length >= 35));
  for (const { why, input, expected } of vectors) {
    it(why, () => {
      if (input.next) {
        const { state, answers } = nextSet(input.heart_rate_bpm, input.respiration_bpm);
        return assert.deepEqual({ state, answers: answers.map((each) => each.state) }, expected);
      }
      const checks = input.checks.map(([minute, heart_rate_bpm, respiration_bpm]: (number | null)[]) => ({ minute, heart_rate_bpm, respiration_bpm }));
      const told = refusedOr(() => {
        const { state, answers } = recovery(checks, input, input.rigorous);
        return { state, answers: Object.fromEntries(answers.map(({ gate, ...each }) => [gate.id, [each.state, each.minute, each.rate]])) };
      });
      assert.deepEqual(told, expected);
    });
  }
});
