// The fence list of an outing: order, filters, tallies, the line of the day.

import assert from "node:assert/strict";
import { test } from "node:test";
import { ASKS, completeBody } from "../../webclient/src/entries/bodies.ts";
import {
  asksAmong, everythingAsked, favouritesFirst, fencesOfOuting, inRidingOrder, matching, NO_FILTER, plain,
} from "../../webclient/src/recording/fenceList.ts";
import { move, nextOrder } from "../../webclient/src/recording/reorder.ts";
import { atElement, byFence, clearThroughout, countOf, tallyOf } from "../../webclient/src/recording/tally.ts";
import { presentations } from "../../webclient/src/recording/timeline.ts";
import { madeAt } from "../../webclient/src/recording/made.ts";
import { changesBetween } from "../../webclient/src/recording/history.ts";
import { fallsAmong, isFirstOuting } from "../../webclient/src/recording/cautions.ts";
import { attemptAt, fence, record } from "./recordingSamples.ts";

const labels = (fences: { body: { label: string } }[]) => fences.map(({ body }) => body.label);
const listed = (...samples: Parameters<typeof fence>[0][]) => samples.map((sample) => record(fence(sample), 1000));

test("riding order is the place in the list, then the label as people count", () => {
  const fences = listed({ label: "10 Ditch" }, { label: "2 Log" }, { label: "Wall", order: 2 }, { label: "Hedge", order: 1 });
  assert.deepEqual(labels(inRidingOrder(fences)), ["Hedge", "Wall", "2 Log", "10 Ditch"]);
});

test("an outing shows its field's fences and those made up for it, not another field's", () => {
  const day = Date.parse("2026-05-03T10:00:00Z");
  const outing = record(completeBody("outing", { horse_id: "h", field_id: "field", date: "2026-05-03", activity: "cross_country_school" }), day);
  const home = record(fence({ label: "Home" }), day);
  const away = record(fence({ label: "Away", field_id: "other" }), day);
  const today = record(fence({ label: "Stick pile", field_id: null }), day);
  const old = record(fence({ label: "Old pile", field_id: null }), day - 9 * 86_400_000);
  const met = record(fence({ label: "Met pile", field_id: null }), day - 9 * 86_400_000);
  const all = [today, old, met, away, home];
  const attempts = [record(attemptAt(met.record_id), day)];
  assert.deepEqual(labels(fencesOfOuting(all, outing, attempts)), ["Home", "Met pile", "Stick pile"]);
  assert.deepEqual(labels(fencesOfOuting(all, outing, [], old.record_id)), ["Home", "Old pile", "Stick pile"]);
});

test("a fence made up while an older outing is written down from memory belongs to it", () => {
  const now = Date.parse("2026-05-10T20:00:00Z");
  const outing = record(completeBody("outing", { horse_id: "h", date: "2026-05-03", activity: "cross_country_school", from_memory: true }), now);
  const madeUp = record(fence({ label: "Pile", field_id: null }), now);
  assert.deepEqual(labels(fencesOfOuting([madeUp], outing, [])), ["Pile"]);
});

test("a search ignores case, accents and spaces, and finds words of the profile and of notes", () => {
  const fences = listed({ label: "Évan’s  log" }, { label: "7", profile: "water", notes: "Soft edge" });
  const wordsOf = (body: { profile: string }) => body.profile;
  assert.deepEqual(labels(matching(fences, { ...NO_FILTER, search: "evan" }, wordsOf)), ["Évan’s  log"]);
  assert.deepEqual(labels(matching(fences, { ...NO_FILTER, search: " WATER  edge " }, wordsOf)), ["7"]);
  assert.deepEqual(matching(fences, { ...NO_FILTER, search: "bank" }, wordsOf), []);
  assert.equal(plain("  Où   est "), "ou est");
});

test("filters by what is asked and by favourite", () => {
  const fences = listed({ label: "Log", favourite: true }, { label: "Trakehner", profile: "trakehner" }, { label: "Double", elements: ["A", "B"] });
  const none = () => "";
  assert.deepEqual(labels(matching(fences, { ...NO_FILTER, ask: "ditch" }, none)), ["Trakehner"]);
  assert.deepEqual(labels(matching(fences, { ...NO_FILTER, ask: "combination" }, none)), ["Double"]);
  assert.deepEqual(labels(matching(fences, { ...NO_FILTER, favourites: true }, none)), ["Log"]);
  assert.deepEqual(asksAmong([...fences, fences[0]!], ASKS).map(({ ask, count }) => [ask, count]), [["fixed", 4], ["ditch", 1], ["combination", 1]]);
  assert.deepEqual([...everythingAsked(fence({ label: "x", asks: ["narrow"] }))], ["narrow"]);
});

test("favourites come first, and nothing else changes its place", () => {
  const fences = listed({ label: "a" }, { label: "b", favourite: true }, { label: "c" }, { label: "d", favourite: true });
  assert.deepEqual(labels(favouritesFirst(fences)), ["b", "d", "a", "c"]);
  assert.deepEqual(labels(fences), ["a", "b", "c", "d"], "the list itself stays as it was");
});

test("moving by buttons swaps two places, and numbers a list that has none", () => {
  const fences = listed({ label: "a", order: 1 }, { label: "b", order: 5 }, { label: "c", order: 9 });
  assert.deepEqual(move(fences, 2, -1), [{ record_id: fences[2]!.record_id, order: 5 }, { record_id: fences[1]!.record_id, order: 9 }]);
  assert.deepEqual(move(fences, 0, -1), []);
  assert.deepEqual(move(fences, 2, 1), []);
  const bare = listed({ label: "a" }, { label: "b", order: 2 }, { label: "c" });
  const moved = move(bare, 0, 1);
  assert.deepEqual(moved.map(({ order }) => order), [1, 2, 3]);
  assert.deepEqual(moved.map(({ record_id }) => bare.findIndex((each) => each.record_id === record_id)), [1, 0, 2]);
  assert.equal(nextOrder(fences), 10);
  assert.equal(nextOrder([]), 1);
});

test("tallies count outcomes, clear first", () => {
  const attempts = [record(attemptAt("log", "refusal"), 1), record(attemptAt("log"), 2), record(attemptAt("log"), 3), record(attemptAt("ditch"), 4)];
  const tally = tallyOf(byFence(attempts).get("log")!);
  assert.deepEqual(tally, [{ outcome: "clear", count: 2 }, { outcome: "refusal", count: 1 }]);
  assert.equal(countOf(tally, "circle"), 0);
});

test("a combination is clear throughout only when every element was met and clear in one presentation", () => {
  const double = fence({ label: "Double", elements: ["A", "B"] });
  const at = (element: "A" | "B", sequence_id: string, outcome: "clear" | "refusal" = "clear") => record(attemptAt("double", outcome, { element, sequence_id }), 1);
  const attempts = [at("A", "1"), at("B", "1"), at("A", "2"), at("B", "2", "refusal"), at("B", "3"), at("A", "4")];
  assert.equal(clearThroughout(double, attempts), 1);
  assert.equal(clearThroughout(fence({ label: "Log" }), attempts), 0);
  assert.equal(atElement(attempts, "A").length, 3);
});

test("the line of the day keeps a sequence together and does not move what was edited later", () => {
  const edited = { ...record(attemptAt("log"), 1000), recorded_at: "2026-05-03T20:00:00Z" };
  const [a, b] = [record(attemptAt("d", "clear", { element: "A", sequence_id: "s" }), 2000), record(attemptAt("d", "clear", { element: "B", sequence_id: "s" }), 3000)];
  const lines = presentations([b, a, edited]);
  assert.deepEqual(lines.map((line) => line.attempts.length), [1, 2]);
  assert.equal(lines[0]!.attempts[0], edited);
  assert.equal(madeAt({ record_id: "6f1d1c7e-6a0c-5b43-9c55-0d8f2f6b7a10", body: null, recorded_at: "1970-01-01T00:00:01Z" }), 1000);
});

test("history names what an edit changed and nothing else", () => {
  const before = attemptAt("log", "clear");
  const after = { ...before, outcome: "refusal" as const, presentation: { ...before.presentation, rein: "left" as const } };
  assert.deepEqual(changesBetween(before, after), [
    { path: "outcome", from: "clear", to: "refusal" },
    { path: "presentation.rein", from: null, to: "left" },
  ]);
  assert.deepEqual(changesBetween({ asks: ["fixed"] }, { asks: ["fixed"], note: null }), []);
});

test("falls are found, and the first outing is known by there being no other", () => {
  const attempts = [record(attemptAt("log", "horse_fall"), 1), record(attemptAt("log"), 2)];
  assert.equal(fallsAmong(attempts).length, 1);
  const outing = record(completeBody("outing", { horse_id: "h", date: "2026-05-03", activity: "cross_country_school" }), 1);
  assert.ok(isFirstOuting([outing], outing.record_id));
  assert.ok(!isFirstOuting([outing], "another"));
});
