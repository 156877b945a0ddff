// Presentation and attitude carried over from the last attempt.

import assert from "node:assert/strict";
import { test } from "node:test";
import {
  firstSides, mannerOf, NOTHING_SAID, otherSides, outingsOfHorse, rememberedManner, sameManner, saidWords, SIDE_NAMES,
  withAttitude, withSide,
} from "../../webclient/src/recording/manner.ts";
import { completeBody, PROFILES } from "../../webclient/src/entries/bodies.ts";
import type { Attempt } from "../../webclient/src/entries/bodies.ts";
import { attemptAt, record } from "./recordingSamples.ts";

const DAY = 86_400_000;
const leftCanter = { presentation: { ...NOTHING_SAID.presentation, rein: "left" as const, pace: "canter" as const }, attitude: "bold" as const };
const met = (more: Partial<Attempt>, at: number) => record(attemptAt("log", "clear", more), at);

test("the last attempt at the fence is remembered, whatever the order of arrival", () => {
  const attempts = [met({ ...leftCanter }, 3 * DAY), met({ attitude: "looky" }, 1 * DAY)];
  assert.deepEqual(rememberedManner(attempts, new Set(["o"]), null), leftCanter);
});

test("an attempt of another horse is not this pair's", () => {
  const attempts = [met({ ...leftCanter, outing_id: "mine" }, DAY), met({ attitude: "rushed", outing_id: "theirs" }, 2 * DAY)];
  assert.equal(rememberedManner(attempts, new Set(["mine"]), null).attitude, "bold");
});

test("each element is remembered by itself", () => {
  const attempts = [met({ element: "A", attitude: "bold" }, DAY), met({ element: "B", attitude: "looky" }, 2 * DAY)];
  assert.equal(rememberedManner(attempts, new Set(["o"]), "A").attitude, "bold");
  assert.equal(rememberedManner(attempts, new Set(["o"]), "C").attitude, null);
});

test("where nothing was ever said, nothing is guessed", () => {
  assert.deepEqual(rememberedManner([], new Set(["o"]), null), NOTHING_SAID);
});

test("outings are told apart by horse", () => {
  const outing = (horse_id: string) => completeBody("outing", { horse_id, date: "2026-05-03", activity: "cross_country_school" });
  const [one, other] = [record(outing("bracken"), DAY), record(outing("tolliver"), DAY)];
  assert.deepEqual([...outingsOfHorse([one, other], "bracken")], [one.record_id]);
});

test("a word is chosen by a tap and taken back by a second tap on it", () => {
  const left = withSide(NOTHING_SAID, "rein", "left");
  assert.equal(left.presentation.rein, "left");
  assert.equal(withSide(left, "rein", "right").presentation.rein, "right");
  assert.ok(sameManner(withSide(left, "rein", "left"), NOTHING_SAID));
  assert.equal(withAttitude(withAttitude(NOTHING_SAID, "bold"), "bold").attitude, null);
  assert.equal(NOTHING_SAID.presentation.rein, null);
});

test("every side can be reached at every fence, once", () => {
  for (const profile of PROFILES) {
    assert.deepEqual([...firstSides(profile), ...otherSides(profile)].sort(), [...SIDE_NAMES].sort(), profile);
  }
  assert.equal(firstSides("water")[0], "way");
});

test("what was said reads in the order of the screen", () => {
  assert.deepEqual(saidWords(leftCanter.presentation).map(({ word }) => word), ["left", "canter"]);
  assert.ok(sameManner(mannerOf(attemptAt("log", "clear", leftCanter)), leftCanter));
});
