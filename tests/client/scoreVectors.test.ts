// The vectors that Python wrote and runs too: course cards, flatwork sheets, jumping rounds.

import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { describe, it } from "node:test";
import { BadInput } from "../../webclient/src/pace/badInput.ts";
import { courseCard, NO_RULES } from "../../webclient/src/pace/course.ts";
import { NO_DRESSAGE_RULES, scoreSheet } from "../../webclient/src/pace/dressage.ts";
import { roundScore } from "../../webclient/src/pace/jumping.ts";

const read = (name: string) => JSON.parse(readFileSync(new URL(`../../fixtures/contract/${name}.json`, import.meta.url), "utf8"));

function refuses(work: () => unknown, field: string): void {
  assert.throws(work, (error) => error instanceof BadInput && error.field === field, `${field} was not refused`);
}

describe("course cards", () => {
  for (const { input, expected } of read("course")) {
    it(`${input.length_m} m at ${input.speed_mpm} m/min, ${JSON.stringify(input.rules)}, ${input.fences.length} fences`, () => {
      const fences = input.fences.map(([label, distance_m]: [string, number]) => ({ label, distance_m }));
      const work = () => courseCard(input.length_m, input.speed_mpm, { ...NO_RULES, ...input.rules }, fences);
      if (expected.refused) return refuses(work, expected.refused);
      const { times, minute_markers, fences: marks } = work();
      assert.deepEqual([times.optimum_s, times.limit_s, times.fastest_s], [expected.optimum_s, expected.limit_s, expected.fastest_s]);
      assert.deepEqual(minute_markers.map((marker) => marker.distance_m), expected.minute_markers_m);
      marks.forEach((mark, n) => assert.ok(Math.abs(mark.clock_s - expected.fence_clocks_s[n]) < 1e-6));
      assert.equal(marks.length, expected.fence_clocks_s.length);
    });
  }
});

const SCORES = read("score");

// This phone keeps one sheet a test; the mean of several judges is the server's.
describe("flatwork sheets", () => {
  const vectors = SCORES.filter(({ input }: { input: { what: string; sheets: unknown[] } }) => input.what === "dressage" && input.sheets.length === 1);
  it("are there", () => assert.ok(vectors.length >= 8));
  for (const { why, input, expected } of vectors) {
    it(why, () => {
      const work = () => scoreSheet(input.sheets[0], input.errors, { ...NO_DRESSAGE_RULES, ...input.rules });
      if (expected.refused) return refuses(work, expected.refused);
      const { percent, penalties, eliminated } = work();
      assert.deepEqual({ percent, penalties, eliminated }, expected);
    });
  }
});

// The server scores fault by fault, this phone by counts: the same but for penalties before an elimination.
describe("jumping rounds", () => {
  const vectors = SCORES.filter(({ input }: { input: { what: string } }) => input.what === "show_jumping");
  it("are there", () => assert.ok(vectors.length >= 6));
  for (const { why, input, expected } of vectors) {
    it(why, () => {
      const count = (...kinds: string[]) => input.faults.filter((fault: { kind: string }) => kinds.includes(fault.kind)).length;
      const stated = Object.fromEntries(Object.entries(input.rules).map(([name, value]) => [name, { value, unit: "", source: "", grade: "" }]));
      const level = { id: "x", name: "x", order: 0, phases: { show_jumping: stated } };
      const round = { knockdowns: count("knockdown"), refusals: count("refusal", "run_out", "circle"), rider_fall: count("rider_fall") > 0, horse_fall: count("horse_fall") > 0 };
      const score = roundScore(round, level as never);
      assert.deepEqual(score, expected.eliminated ? { is: "eliminated" } : { is: "penalties", penalties: expected.penalties });
    });
  }
});
