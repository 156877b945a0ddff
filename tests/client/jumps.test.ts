// A round told fence by fence: the counts the book checks, and the fence that comes next.

import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { test } from "node:test";

import type { Jump, JumpingRound } from "../../webclient/src/entries/bodies.ts";
import { blank, counted, DRAFT_OF, roundBody } from "../../webclient/src/screens/results/drafts.ts";
import { countsOf, nextFence, nextLabel, nextPart } from "../../webclient/src/screens/results/jumps.ts";

interface Vector {
  name: string;
  jumps: string[];
  counts: object;
  next: string;
}
const { rounds } = JSON.parse(readFileSync(new URL("../../fixtures/contract/round.json", import.meta.url), "utf8")) as { rounds: Vector[] };

const jumpsOf = (lines: string[]): Jump[] => lines.map((line) => ({ label: line.split(" ")[0]!, outcome: line.split(" ")[1] as Jump["outcome"] }));

for (const { name, jumps, counts, next } of rounds) {
  test(`${name} adds up as the book counts it`, () => {
    assert.deepEqual(countsOf(jumpsOf(jumps)), counts);
    assert.equal(nextLabel(jumpsOf(jumps)), next);
  });
}

test("a fence becomes a combination, and a combination ends", () => {
  assert.deepEqual([nextPart("4"), nextPart("4A"), nextPart("4F"), nextFence("4B"), nextFence("4"), nextLabel([])], ["4A", "4B", "4F", "5", "5", "1"]);
});

test("the body carries the jumps with their sums, and counts alone carry none", () => {
  const draft = { ...blank("2026-05-03").jumping_round, horse_id: "h", height_cm: 95, jumps: jumpsOf(["1 clear", "2 knockdown"]), efforts: 9, knockdowns: 5 };
  const told = roundBody({ ...draft, by: "jumps" });
  assert.deepEqual([told.efforts, told.knockdowns, told.jumps!.length, "by" in told], [2, 1, 2, false]);
  const plain = roundBody({ ...draft, by: "counts" });
  assert.deepEqual([plain.efforts, plain.knockdowns, plain.jumps], [9, 5, []]);
  assert.equal(counted({ ...draft, by: "jumps", jumps: [] }).efforts, null);
  assert.equal(DRAFT_OF.jumping_round(told as JumpingRound).by, "jumps");
});
