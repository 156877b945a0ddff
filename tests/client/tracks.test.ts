// A track as it is typed, and the plan of a run made of it.

import assert from "node:assert/strict";
import { describe, it } from "node:test";
import type { Track } from "../../webclient/src/entries/bodies.ts";
import { blankTrack, distanceU, draftOf, metresOf, readDraft, trackBody, troubles } from "../../webclient/src/screens/tracks/trackDraft.ts";
import { NOTHING_CHOSEN, planOf, recalled, tracksInOrder } from "../../webclient/src/screens/watch/choice.ts";

const FIELD = "018f0000-0000-7000-8000-000000000003";
const OUTING = "018f0000-0000-7000-8000-000000000004";
const draft = { ...blankTrack(FIELD, "m"), name: "Top hedge", distance: "420" };

describe("a track", () => {
  it("in metres or yards comes to metres; a yard is 0.9144 m exactly (agreement of 1959)", () => {
    assert.equal(metresOf(draft), 420);
    assert.equal(metresOf({ ...draft, unit: "yd", distance: "500" }), 457.2);
    assert.equal(metresOf({ ...draft, distance: "0.42 km" }), 420);
    assert.equal(metresOf({ ...draft, unit: "yd", distance: "420 m" }), 420);
  });
  for (const distance of ["", "0", "-5", "9", "10001", "NaN", "1e9", "1,850", "long"]) {
    it(`${JSON.stringify(distance)} is no distance a track can have`, () => assert.equal(metresOf({ ...draft, distance }), null));
  }
  it("lacks what it lacks", () => {
    assert.deepEqual(troubles(blankTrack(null, "m")), ["need_name", "need_distance"]);
    assert.equal(trackBody(blankTrack(null, "m")), null);
  });
  it("is good to 1 % by wheel, 0.5 % as told, 0.2 % by tape: assumptions shared with the server", () => {
    const by = (measured_by: Track["measured_by"]) => distanceU(400, { measured_by, distance_u_m: null });
    assert.deepEqual([by("wheel"), by("known"), by("tape")], [4, 2, 0.8]);
    assert.equal(distanceU(400, { measured_by: "wheel", distance_u_m: 1.5 }), 1.5);
  });
  it("keeps an own figure through an edit of the name, and drops it with another distance", () => {
    const before: Track = { field_id: FIELD, name: "Top hedge", distance_m: 400, measured_by: "wheel", distance_u_m: 1.5, notes: null };
    const edited = draftOf(before, "m");
    assert.equal(trackBody({ ...edited, name: "Oaks" }, before)?.distance_u_m, 1.5);
    assert.equal(trackBody({ ...edited, distance: "410" }, before)?.distance_u_m, null);
    assert.equal(trackBody({ ...edited, measured_by: "tape" }, before)?.distance_u_m, null);
  });
  it("half typed is read back, and a broken draft falls back", () => {
    assert.equal(readDraft(JSON.stringify(draft), blankTrack(null, "m")).name, "Top hedge");
    assert.deepEqual(readDraft('{"measured_by":"eye"}', draft), draft);
    assert.deepEqual(readDraft("{", draft), draft);
  });
});

describe("a plan", () => {
  const track = { record_id: "t", body: trackBody(draft) as Track };
  it("copies the track as it is today", () => {
    assert.deepEqual(planOf({ ...NOTHING_CHOSEN, target_speed_mpm: 420 }, track, OUTING), {
      outing_id: OUTING, track_id: "t", distance_m: 420, distance_u_m: null, measured_by: "wheel",
      target_speed_mpm: 420, level_id: null, start: "flying", over_fences: false,
    });
  });
  it("waits for a track and an outing", () => {
    assert.equal(planOf(NOTHING_CHOSEN, undefined, OUTING), null);
    assert.equal(planOf(NOTHING_CHOSEN, track, null), null);
  });
  it("starts from what was chosen last, as far as that is a choice", () => {
    assert.deepEqual(recalled(null), NOTHING_CHOSEN);
    assert.equal(recalled({ target_speed_mpm: 420 }).target_speed_mpm, 420);
    for (const target_speed_mpm of [0, 5000, Number.NaN, "fast" as never]) assert.equal(recalled({ target_speed_mpm }).target_speed_mpm, null);
  });
  it("offers the field's own tracks first", () => {
    const named = (name: string, field_id: string | null) => ({ record_id: name, body: { ...track.body, name, field_id } });
    const order = tracksInOrder([named("b", null), named("z", FIELD), named("a", null), named("c", FIELD)], FIELD);
    assert.deepEqual(order.map((one) => one.record_id), ["c", "z", "a", "b"]);
  });
});
