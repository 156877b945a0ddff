// The three results as they are typed, and the bodies they make.

import assert from "node:assert/strict";
import { describe, it } from "node:test";
import type { EventResult, FlatworkTest, JumpingRound } from "../../webclient/src/entries/bodies.ts";
import { makeCard } from "../../webclient/src/screens/course/useCourse.ts";
import { readFenceLines } from "../../webclient/src/screens/course/fenceLines.ts";
import { blank, DRAFT_OF, eventBody, flatworkBody, lacks, readDraft, roundBody, total } from "../../webclient/src/screens/results/drafts.ts";
import { typedNumber } from "../../webclient/src/screens/results/numbers.ts";

const TODAY = "2026-05-03";
const HORSE = "018f0000-0000-7000-8000-000000000002";
const BLANK = blank(TODAY);

describe("a typed number", () => {
  const cases: [string, number | null | undefined][] = [
    ["", undefined], ["  ", undefined], ["66.5", 66.5], ["66,5", 66.5], ["0", 0], ["100", 100], ["100.1", null], ["-1", null],
    ["abc", null], ["1e3", null], ["6 6", null], [".5", null], ["NaN", null], ["6.", null],
  ];
  for (const [text, value] of cases) it(JSON.stringify(text), () => assert.equal(typedNumber(text, 0, 100), value));
  it("takes a minus of either kind, and wants a whole one where it must be", () => {
    assert.equal(typedNumber("−12", -600, 1200, true), -12);
    assert.equal(typedNumber("12.5", -600, 1200, true), null);
  });
});

describe("a flatwork test", () => {
  const ridden = { ...BLANK.flatwork_test, horse_id: HORSE, test: " Novice 27 ", percent: "66,5" };
  it("lacks horse, test and percentage while blank", () => {
    assert.deepEqual(lacks("flatwork_test", BLANK.flatwork_test, TODAY), ["horse", "test", "percent"]);
    assert.deepEqual(lacks("flatwork_test", ridden, TODAY), []);
  });
  it("refuses a day after today and none at all", () => {
    for (const date of ["2026-05-04", "", "3 May", "1823-01-01"]) assert.deepEqual(lacks("flatwork_test", { ...ridden, date }, TODAY), ["date"]);
  });
  it("refuses a line with something that is no mark", () => {
    for (const marks of ["", "6 eleven 7"]) assert.deepEqual(lacks("flatwork_test", { ...ridden, by: "marks", marks }, TODAY), ["marks"]);
  });
  it("keeps the percentage as typed", () => {
    const body = flatworkBody(ridden, null);
    assert.deepEqual([body.test, body.percent, body.marks, body.note], ["Novice 27", 66.5, [], null]);
  });
  it("keeps the marks with the percentage they make", () => {
    const body = flatworkBody({ ...ridden, by: "marks", marks: "6 7x2" }, 66.667);
    assert.deepEqual([body.percent, body.marks.map((one) => [one.movement, one.mark, one.coefficient])], [66.667, [["1", 6, 1], ["2", 7, 2]]]);
  });
  it("comes back from its body for an edit", () => {
    const body = flatworkBody({ ...ridden, by: "marks", marks: "6 7x2", note: "calm" }, 66.667) as FlatworkTest;
    assert.deepEqual(flatworkBody(DRAFT_OF.flatwork_test(body), body.percent), body);
  });
});

describe("a jumping round", () => {
  const ridden = { ...BLANK.jumping_round, horse_id: HORSE, height_cm: 95, efforts: 10 };
  it("lacks height and efforts while blank", () => {
    assert.deepEqual(lacks("jumping_round", BLANK.jumping_round, TODAY), ["horse", "height", "efforts"]);
    assert.deepEqual(lacks("jumping_round", { ...ridden, time_penalties: "many" }, TODAY), ["time_penalties"]);
  });
  it("carries no rulebook and no level, which its body does not know", () => {
    const body = roundBody({ ...ridden, rulebook_id: "us-2025", level_id: "novice" });
    assert.deepEqual(Object.keys(body).sort(), Object.keys(roundBody(ridden)).sort());
    assert.ok(!("level_id" in body) && !("rulebook_id" in body));
  });
  it("comes back from its body for an edit", () => {
    const body = roundBody({ ...ridden, time_penalties: "0.4", rider_fall: true, note: " late " }) as JumpingRound;
    assert.deepEqual([body.time_penalties, body.note], [0.4, "late"]);
    assert.deepEqual(roundBody(DRAFT_OF.jumping_round(body)), body);
  });
});

describe("an event", () => {
  const numbers = { ...BLANK.event_result.numbers, dressage_penalties: "33.5", cross_country_jump_penalties: "20", place: "7" };
  const ridden = { ...BLANK.event_result, horse_id: HORSE, event: "Low Moor", level_id: "novice", numbers };
  it("lacks name and level while blank, and names a number that is wrong", () => {
    assert.deepEqual(lacks("event_result", BLANK.event_result, TODAY), ["horse", "event", "level"]);
    assert.deepEqual(lacks("event_result", { ...ridden, numbers: { ...numbers, starters: "2.5" } }, TODAY), ["starters"]);
  });
  it("leaves what was not said null, never zero", () => {
    const body = eventBody(ridden);
    assert.deepEqual([body.dressage_penalties, body.show_jumping_jump_penalties, body.place, body.starters], [33.5, null, 7, null]);
  });
  it("comes back from its body for an edit", () => {
    const body = eventBody(ridden) as EventResult;
    assert.deepEqual(eventBody(DRAFT_OF.event_result(body)), body);
  });
  it("adds up what is given and says whether that is all", () => {
    assert.equal(total({}), null);
    assert.deepEqual(total({ dressage_penalties: 33.5, cross_country_jump_penalties: 20 }), { total: 53.5, whole: false });
    assert.deepEqual(total({ dressage_penalties: 30.1, show_jumping_jump_penalties: 4, show_jumping_time_penalties: 0.4, cross_country_jump_penalties: 0, cross_country_time_penalties: 1.2 }), { total: 35.7, whole: true });
  });
});

describe("a draft kept on the phone", () => {
  it("is read back, and an unknown or broken one falls back", () => {
    const first = BLANK.flatwork_test;
    assert.equal(readDraft<"flatwork_test">('{"test":"Novice 27","sent_by_a_newer_version":1}', first).test, "Novice 27");
    assert.ok(!("sent_by_a_newer_version" in readDraft<"flatwork_test">('{"sent_by_a_newer_version":1}', first)));
    for (const broken of ["", "{", "null", "7"]) assert.deepEqual(readDraft<"flatwork_test">(broken, first), first);
  });
});

describe("a course as typed", () => {
  const draft = { length: "3150", speed_mpm: 450, rulebook_id: null, level_id: null, fences: "" };
  it("reads fences one a line", () => {
    assert.deepEqual(readFenceLines("1 120\n 7AB: 840 m \n\nlast one 3050\nnonsense"), {
      fences: [{ label: "1", distance_m: 120 }, { label: "7AB", distance_m: 840 }, { label: "last one", distance_m: 3050 }], unread: ["nonsense"],
    });
  });
  it("makes a card, or says what is wrong, or waits", () => {
    assert.equal(makeCard(draft, null).card?.times.optimum_s, 420);
    assert.deepEqual(makeCard({ ...draft, length: "" }, null), { card: null, trouble: null });
    assert.deepEqual(makeCard({ ...draft, length: "5" }, null), { card: null, trouble: "length" });
    assert.deepEqual(makeCard({ ...draft, fences: "1 500\n2 400" }, null), { card: null, trouble: "fence" });
    assert.deepEqual(makeCard({ ...draft, fences: "1 9999" }, null), { card: null, trouble: "fence" });
  });
});
