// Building a fence: form, steps, what a profile makes sensible, a fence made up on the spot.

import assert from "node:assert/strict";
import { test } from "node:test";
import { ACTIVITIES, PROFILES } from "../../webclient/src/entries/bodies.ts";
import { DIMENSIONS, firstDimensions, otherDimensions, STEP_FROM_CM, withinLimits } from "../../webclient/src/recording/dimensions.ts";
import {
  addElement, bodyOf, emptyForm, formFromDraft, formOf, NO_REST, NOT_MEASURED, problemsOf, removeElement, typed, withAsk,
  withDimension, withElement, withProfile,
} from "../../webclient/src/recording/fenceForm.ts";
import { freeLabel, madeUpBody, mainDimension } from "../../webclient/src/recording/madeUp.ts";
import { asksAtOuting, commonProfiles, rareProfiles } from "../../webclient/src/recording/profiles.ts";
import { positionOf } from "../../webclient/src/recording/position.ts";
import { step } from "../../webclient/src/recording/steps.ts";
import { planningStrides } from "../../webclient/src/recording/strides.ts";
import { fence, record } from "./recordingSamples.ts";

const LIMITS = [1, 250] as const;
const parse = (text: string) => Number(text);

test("metric buttons move by whole centimetres, the first tap lands on the start", () => {
  assert.equal(step(null, 5, "metric", 80, LIMITS), 80);
  assert.equal(step(80, 5, "metric", 80, LIMITS), 85);
  assert.equal(step(80.4, 1, "metric", 80, LIMITS), 81);
  assert.equal(step(80.4, -1, "metric", 80, LIMITS), 80);
});

test("imperial buttons move by whole inches (1 in = 2.54 cm, exactly, international inch of 1959)", () => {
  assert.equal(step(88.9, 1, "imperial", 80, LIMITS), 91.4);
  assert.equal(step(91.4, -1, "imperial", 80, LIMITS), 88.9);
  let value = 76.2;
  for (let taps = 0; taps < 12; taps += 1) value = step(value, 1, "imperial", 80, LIMITS);
  assert.equal(value, 106.7);
});

test("steps stop at the limits", () => {
  assert.equal(step(250, 5, "metric", 80, LIMITS), 250);
  assert.equal(step(2, -5, "metric", 80, LIMITS), 1);
});

test("a bounce is 12 ft, one stride 24 ft, two 36 ft (trade practice, see trade/strides.py)", () => {
  assert.deepEqual([12, 24, 36].map((feet) => planningStrides(feet * 0.3048)?.strides), [0, 1, 2]);
  assert.deepEqual(planningStrides(11), { strides: 2, over_m: 0 });
  assert.deepEqual(planningStrides(7), { strides: 1, over_m: -0.3 });
  assert.deepEqual(planningStrides(2), { strides: 0, over_m: -1.7 });
  assert.equal(planningStrides(0), null);
  assert.equal(planningStrides(null), null);
});

test("every dimension can be reached at every profile, once, and has a start within its limits", () => {
  for (const profile of PROFILES) {
    assert.deepEqual([...firstDimensions(profile), ...otherDimensions(profile)].sort(), [...DIMENSIONS].sort(), profile);
  }
  for (const dimension of DIMENSIONS) assert.ok(withinLimits(dimension, STEP_FROM_CM[dimension]), dimension);
});

test("every profile can be chosen wherever the fence is met, the common ones first", () => {
  for (const activity of [...ACTIVITIES, null]) {
    const offered = [...commonProfiles(activity), ...rareProfiles(activity)];
    assert.deepEqual([...offered].sort(), [...PROFILES].sort());
  }
  assert.ok(commonProfiles("jumping_school").includes("oxer"));
});

test("poles made up in a jumping school are not taken for fixed fences", () => {
  assert.deepEqual(asksAtOuting("jumping_school"), ["show_jump"]);
  assert.equal(asksAtOuting("cross_country_school"), null);
});

test("asks follow the profile until the person ticks one", () => {
  const table = withProfile(emptyForm(), "table");
  assert.deepEqual(table.asks, ["fixed", "wide_table"]);
  assert.deepEqual(withProfile(table, "ditch").asks, ["ditch"]);
  assert.deepEqual(withProfile(withAsk(table, "wide_table"), "ditch").asks, ["fixed"]);
});

test("an empty form says what is missing, in the order of the screen", () => {
  assert.deepEqual(problemsOf(emptyForm()), [{ path: "label", code: "empty" }, { path: "profile", code: "empty" }]);
});

test("what cannot be read or is out of range is named with its place", () => {
  let form = withProfile({ ...emptyForm(), label: "Log" }, "log");
  form = withDimension(withDimension(form, "height_cm", typed("tall", parse)), "drop_cm", typed("4000", parse));
  assert.deepEqual(problemsOf(form), [{ path: "height_cm", code: "not_a_number" }, { path: "drop_cm", code: "out_of_range" }]);
});

test("a single fence's body has what was measured and null for the rest", () => {
  const form = withDimension(withProfile({ ...emptyForm(), label: " Log " }, "log"), "height_cm", typed("85", parse));
  const body = bodyOf(form, { ...NO_REST, field_id: "field", order: 3 });
  assert.deepEqual([body.label, body.height_cm, body.spread_top_cm, body.order, body.field_id], ["Log", 85, null, 3, "field"]);
  assert.deepEqual(body.asks, ["fixed"]);
});

test("adding an element makes a combination whose A is the fence so far; removing it goes back", () => {
  const single = withDimension(withProfile({ ...emptyForm(), label: "Double" }, "roofed"), "height_cm", typed("85", parse));
  let form = addElement(single);
  form = withElement(form, 1, withProfile(form.elements[1]!, "narrow"));
  form = withElement(form, 0, { ...form.elements[0]!, distance_to_next: typed("7.2", parse) });
  const body = bodyOf(form, NO_REST);
  assert.deepEqual(body.elements.map(({ letter, profile, distance_to_next_m }) => [letter, profile, distance_to_next_m]), [["A", "roofed", 7.2], ["B", "narrow", null]]);
  assert.deepEqual([body.height_cm, body.elements[0]!.height_cm, body.asks], [null, 85, ["combination"]]);
  const back = removeElement(form, 1);
  assert.equal(back.elements.length, 0);
  assert.equal(bodyOf(back, NO_REST).height_cm, 85);
});

test("a bounce is said of the combination as a whole", () => {
  const form = withAsk(addElement(withProfile({ ...emptyForm(), label: "Bounce" }, "rail")), "bounce");
  const filled = withElement(form, 1, withProfile(form.elements[1]!, "rail"));
  assert.deepEqual(bodyOf(filled, NO_REST).asks, ["combination", "bounce"]);
  assert.deepEqual(bodyOf(filled, NO_REST).elements[0]!.asks, ["fixed", "airy_rail"]);
});

test("at most six elements, A to F", () => {
  let form = emptyForm();
  for (let n = 0; n < 9; n += 1) form = addElement(form);
  assert.equal(form.elements.length, 6);
});

test("an existing fence goes through the form unchanged", () => {
  const body = { ...fence({ label: "Treble", elements: ["A", "B", "C"], asks: ["combination"], notes: "Old" }), order: 4, latitude: 51.5, sketch_east_m: 20 };
  body.elements[0] = { ...body.elements[0]!, height_cm: 87.3, distance_to_next_m: 11, asks: ["fixed"] };
  body.elements[1]!.asks = ["fixed"];
  body.elements[2]!.asks = ["fixed"];
  const form = formOf(body, (cm) => `${cm}`, (m) => `${m}`);
  assert.deepEqual(bodyOf(form, { field_id: body.field_id, order: body.order, ...positionOf(body) }), body);
});

test("a form survives as a draft; a damaged draft is not a form", () => {
  const form = addElement(withProfile({ ...emptyForm(), label: "Half" }, "log"));
  assert.deepEqual(formFromDraft(JSON.stringify(form)), form);
  for (const text of ["", "{", "null", "{}", '{"label":"x","elements":[{}],"asks":[]}']) assert.equal(formFromDraft(text), null);
});

test("a fence made up on the spot needs its profile only and finds itself a name", () => {
  const made = { profile: "log" as const, asks: [], asks_ticked: false, label: "", height: NOT_MEASURED, field_id: null, order: null };
  const body = madeUpBody({ ...made, height: typed("70", parse) }, () => "Log", [record(fence({ label: "Log" }), 1)]);
  assert.deepEqual([body.label, body.height_cm, body.field_id, body.asks], ["Log 2", 70, null, ["fixed"]]);
  assert.equal(freeLabel("Log", []), "Log");
  assert.equal(mainDimension("ditch"), "spread_without_height_cm");
  assert.equal(madeUpBody({ ...made, profile: "drop", height: typed("60", parse) }, () => "Drop", []).drop_cm, 60);
});
