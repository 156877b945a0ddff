// The bar on its screen: every number has words, a range and a source; what a coach types is read or refused; of two
// changes of one number both stand and the later counts.

import assert from "node:assert/strict";
import { test } from "node:test";

import { counts, defaultOf, quantitiesOf, readAsked, sourceOf, titleOf } from "../../webclient/src/screens/bar/asked.ts";
import { inForce, isShare, newestFirst, readNumber, shownNumber, typedNumber } from "../../webclient/src/screens/bar/numbers.ts";
import { RANGES, REQUIREMENTS, SOURCES } from "../../webclient/src/screens/bar/shipped.ts";
import { british } from "../../webclient/src/words/british.ts";
import { german } from "../../webclient/src/words/german.ts";
import { COMMON } from "../../webclient/src/words/sourced.ts";

const now = { numbers: { bound: 0.79, clear: 5, outings: 2, size_fraction: 0.95, height_above_cm: 5 }, changes: [{ quantity: "clear", default: 3, value: 5, reason: "Green.", record_id: "a" }] };

test("every number of the shipped bar has words, and no words stand for none", () => {
  const named = Object.keys(british).filter((key) => key.startsWith("bar.n.")).map((key) => key.slice("bar.n.".length));
  assert.deepEqual(Object.keys(RANGES).toSorted(), named.toSorted());
});

test("every number of every requirement has a source in the client", () => {
  for (const [id, [title, weigh, source, own]] of Object.entries(REQUIREMENTS)) {
    assert.equal(titleOf(id), title);
    for (const quantity of new Set([...own, ...Object.keys(SOURCES[weigh]!)])) assert.ok(sourceOf(id, quantity), `${id} ${quantity}`);
    for (const quantity of own) assert.equal(sourceOf(id, quantity), source);
  }
  assert.deepEqual([sourceOf("no_such", "clear"), titleOf("no_such")], ["", "no_such"]);
});

test("every part of a source has its German words, and no German words stand for none", () => {
  const all = [...Object.values(SOURCES).flatMap((each) => Object.values(each)), ...Object.values(REQUIREMENTS).map(([, , source]) => source)];
  const parts = new Set(all.flatMap((source) => source.split("; ")).map((part) => (part.endsWith(COMMON) ? part.slice(0, -COMMON.length) : part)));
  const theirs = Object.keys(german).filter((key) => key.startsWith("sourced.")).map((key) => key.slice("sourced.".length));
  assert.deepEqual([...parts].filter((part) => !theirs.includes(part)), []);
  assert.deepEqual(theirs.filter((part) => !parts.has(part)), ["common", "asked_from"]);
});

test("shares are the numbers without a unit that end at about one, and are shown and typed in per cent", () => {
  const ends = (quantity: string) => RANGES[quantity]![1];
  for (const quantity of Object.keys(RANGES)) assert.equal(isShare(quantity), ends(quantity) <= 1.5 && quantity !== "dropped", quantity);
  assert.deepEqual([shownNumber("bound", 0.79), typedNumber("bound", 0.855), shownNumber("clear", 3)], ["79 %", "85.5", "3"]);
  for (let value = 1; value < 100; value++) assert.equal(readNumber("bound", typedNumber("bound", value / 100)), value / 100);
});

test("a number is read as people type it", () => {
  const read = ["79", "79 %", " 79,5", "7.5", "−5", "-5", "", "abc", "1e3", "1.2.3", "5 or so"].map((text) => readNumber("height_above_cm", text));
  assert.deepEqual(read, [79, 79, 79.5, 7.5, -5, -5, null, null, null, null, null]);
});

test("what cannot be meant is refused with what is wrong", () => {
  const trouble = (quantity: string, text: string) => {
    const asked = readAsked(quantity, text, now);
    return "trouble" in asked ? asked.trouble : asked.value;
  };
  assert.deepEqual(["", "many", "0", "51", "2.5", "5", "7"].map((text) => trouble("clear", text)), ["missing", "missing", "range", "range", "whole", "same", 7]);
  assert.deepEqual(["0", "100", "79", "85"].map((text) => trouble("bound", text)), ["range", "range", "same", 0.85]);
  assert.equal(trouble("dropped", ""), 1);
});

test("the default typed again puts the default back", () => {
  assert.equal(defaultOf("clear", now), 3);
  assert.equal(defaultOf("outings", now), 2);
  assert.deepEqual(readAsked("clear", "3", now), { value: null });
});

test("numbers come in the bar's own order, and one that an older release turned too far counts as the nearest", () => {
  assert.deepEqual(quantitiesOf(now.numbers).slice(0, 3), ["clear", "outings", "bound"]);
  assert.deepEqual([counts("clear", 5000), counts("clear", -2), counts("clear", 4)], [50, 1, 4]);
});

test("of the changes of one number the last counts; one that puts the default back leaves none", () => {
  const change = (quantity: string, value: number | null, record_id: string) => ({ quantity, value, record_id, default: 3, reason: "" });
  const made = [change("clear", 5, "a"), change("outings", 4, "b"), change("clear", 7, "c"), change("outings", null, "d")];
  assert.deepEqual(inForce(made).map((each) => each.record_id), ["c"]);
});

test("two coaches' changes both stand, newest first, what has not been sent on top", () => {
  const kept = (record_id: string, number: number | null, quantity = "clear", recorded_at = "2026-05-01T10:00:00.000Z") => ({ record_id, number, recorded_at, body: { requirement_id: "fixed", quantity } });
  const shown = newestFirst([kept("idris", 5), kept("other", 6, "fields"), kept("maren", 7), kept("phone", null), kept("phone_later", null, "clear", "2026-05-02T10:00:00.000Z")]);
  assert.deepEqual(shown.map((each) => [each.record_id, each.replaced]), [["phone_later", false], ["phone", true], ["maren", true], ["other", false], ["idris", true]]);
});
