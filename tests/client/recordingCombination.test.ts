// Combinations tapped element by element.

import assert from "node:assert/strict";
import { test } from "node:test";
import { makeAttempt } from "../../webclient/src/recording/attempt.ts";
import { nextPlace, openSequence, placeAt, SEQUENCE_LASTS_MS } from "../../webclient/src/recording/combination.ts";
import type { Letter } from "../../webclient/src/recording/combination.ts";
import { NOTHING_SAID } from "../../webclient/src/recording/manner.ts";
import type { Attempt, Outcome } from "../../webclient/src/entries/bodies.ts";
import { attemptAt, fence, ids, record } from "./recordingSamples.ts";

const treble = fence({ label: "Treble", elements: ["A", "B", "C"] });
const FENCE_ID = "treble";
const START = Date.parse("2026-05-03T09:00:00Z");

/** Rides the treble as a person taps it: each tap takes the place offered, or the element named. */
function ride(taps: [Outcome, Letter?][], every_ms = 4000) {
  const newId = ids("s");
  const kept: ReturnType<typeof record<Attempt>>[] = [];
  taps.forEach(([outcome, chosen], at) => {
    const now = START + at * every_ms;
    const place = chosen ? placeAt(chosen, FENCE_ID, treble, kept, now) : nextPlace(FENCE_ID, treble, kept, now);
    const body = makeAttempt({ outing_id: "o", fence_id: FENCE_ID, outcome, place, manner: NOTHING_SAID }, newId);
    kept.push(record(body, now));
  });
  return kept;
}

const path = (kept: ReturnType<typeof ride>) => kept.map(({ body }) => `${body.element}${body.sequence_id}`);

test("A, B, C clear is one sequence, and the next presentation begins another at A", () => {
  const kept = ride([["clear"], ["clear"], ["clear"], ["clear"]]);
  assert.deepEqual(path(kept), ["As1", "Bs1", "Cs1", "As2"]);
});

test("after a stop at B the next tap is B again, in a new sequence, which goes on to C", () => {
  const kept = ride([["clear"], ["refusal"], ["clear"], ["clear"]]);
  assert.deepEqual(path(kept), ["As1", "Bs1", "Bs2", "Cs2"]);
});

test("after a stop at B the rider may come again from A", () => {
  const kept = ride([["clear"], ["run_out"], ["clear", "A"], ["clear"], ["clear"]]);
  assert.deepEqual(path(kept), ["As1", "Bs1", "As2", "Bs2", "Cs2"]);
});

test("a missed flag or a pole down rides on; a fall or retiring ends the sequence", () => {
  assert.deepEqual(path(ride([["missed_flag"], ["knockdown"], ["clear"]])), ["As1", "Bs1", "Cs1"]);
  assert.deepEqual(path(ride([["clear"], ["rider_fall"], ["clear"]])), ["As1", "Bs1", "As2"]);
  assert.deepEqual(path(ride([["retired"], ["clear"]])), ["As1", "As2"]);
});

test("an element whose tap was missed does not break the sequence", () => {
  assert.deepEqual(path(ride([["clear"], ["clear", "C"]])), ["As1", "Cs1"]);
});

test("choosing the same or an earlier element begins a new presentation", () => {
  assert.deepEqual(path(ride([["clear"], ["clear"], ["clear", "B"]])), ["As1", "Bs1", "Bs2"]);
});

test("a fence met in between ends the sequence", () => {
  const kept = [...ride([["clear"]]), record(attemptAt("log"), START + 5000)];
  assert.deepEqual(nextPlace(FENCE_ID, treble, kept, START + 6000), { element: "A", sequence_id: null });
});

test("choosing another fence ends the sequence even when nothing is tapped there", () => {
  const kept = ride([["clear"]]);
  const left = openSequence(FENCE_ID, kept, START + 1000);
  assert.equal(left, "s1");
  assert.deepEqual(nextPlace(FENCE_ID, treble, kept, START + 2000, left), { element: "A", sequence_id: null });
  assert.deepEqual(placeAt("B", FENCE_ID, treble, kept, START + 2000, left), { element: "B", sequence_id: null });
});

test("a sequence left alone for long is over", () => {
  const kept = ride([["clear"]]);
  assert.equal(nextPlace(FENCE_ID, treble, kept, START + SEQUENCE_LASTS_MS).element, "B");
  assert.equal(nextPlace(FENCE_ID, treble, kept, START + SEQUENCE_LASTS_MS + 1).element, "A");
});

test("a single fence has neither element nor sequence", () => {
  const place = nextPlace("log", fence({ label: "Log" }), ride([["clear"]]), START);
  const body = makeAttempt({ outing_id: "o", fence_id: "log", outcome: "clear", place, manner: NOTHING_SAID }, ids("s"));
  assert.deepEqual([body.element, body.sequence_id], [null, null]);
});
