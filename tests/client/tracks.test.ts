// A track as it is typed, and the plan of a run made of it.

import assert from "node:assert/strict";
import { describe, it } from "node:test";
import type { Calibration, Track } from "../../webclient/src/entries/bodies.ts";
import { blankTrack, distanceU, draftOf, metresOf, readDraft, trackBody, troubles } from "../../webclient/src/screens/tracks/trackDraft.ts";
import { NOTHING_CHOSEN, planOf, recalled, tracksInOrder } from "../../webclient/src/screens/watch/choice.ts";

const FIELD = "018f0000-0000-7000-8000-000000000003";
const OUTING = "018f0000-0000-7000-8000-000000000004";
const TRACK: Track = { field_id: FIELD, name: "Top hedge", distance_m: 400, measured_by: "wheel", distance_u_m: null, calibration_id: null, reading_m: null, flags_m: [], notes: null };
const WHEEL: Calibration = { instrument: "Yard wheel", measured_by: "wheel", taped_distance_m: 50, taped_u_m: null, walked_m: [50.3, 50.5, 50.4], reading_step_m: 0.1, date: "2026-05-03", note: null };
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
  it("keeps an own figure, which stands in its own box", () => {
    const edited = draftOf({ ...TRACK, distance_u_m: 1.5 }, "m");
    assert.equal(edited.own_u, "1.5");
    assert.equal(trackBody({ ...edited, name: "Oaks" })?.distance_u_m, 1.5);
    assert.equal(trackBody({ ...edited, own_u: "0,8" })?.distance_u_m, 0.8);
    assert.equal(trackBody({ ...edited, own_u: " " })?.distance_u_m, null);
    for (const own_u of ["x", "-1", "1001"]) assert.deepEqual(troubles({ ...edited, own_u }), ["need_u"]);
  });
  it("read by a calibrated instrument is put right, and reads the same when it is opened again", () => {
    // by hand: 50 / 50.4 · 412.5 = 409.226…; fixtures/contract/calibration.json has its uncertainty
    const read = { ...draft, distance: "412.5", calibration_id: "wheel", own_u: "9" };
    const body = trackBody(read, WHEEL) as Track;
    assert.deepEqual([body.distance_m, body.distance_u_m, body.reading_m, body.calibration_id, body.measured_by], [409.23, 1.267, 412.5, "wheel", "wheel"]);
    for (const liked of ["m", "yd"] as const) {
      const again = draftOf(body, liked);
      assert.deepEqual([again.distance, again.unit, again.own_u], ["412.5", "m", ""]);
      assert.deepEqual(trackBody(again, WHEEL), body);
    }
    assert.equal(trackBody(read, { ...WHEEL, measured_by: "paces" })?.measured_by, "paces");
  });
  it("whose calibration was chosen away is as long as it says", () => {
    const body = trackBody({ ...draftOf({ ...TRACK, calibration_id: "wheel", reading_m: 412.5 }, "m"), calibration_id: null }, null);
    assert.deepEqual([body?.distance_m, body?.reading_m, body?.calibration_id], [412.5, null, null]);
  });
  it("has flags between the first and the second, in the order they are passed", () => {
    const flags = (text: string) => trackBody({ ...draft, flags: text })?.flags_m;
    assert.deepEqual([flags(""), flags("100, 200.5 300"), flags("100,200")], [[], [100, 200.5, 300], [100, 200]]);
    for (const text of ["200, 100", "0", "420", "100 100", "500"]) assert.deepEqual(troubles({ ...draft, flags: text }), ["need_flags"], text);
    assert.equal(draftOf({ ...TRACK, flags_m: [100, 200.5] }, "m").flags, "100, 200.5");
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
      target_speed_mpm: 420, level_id: null, start: "flying", countdown_s: null, set_id: null, flags_m: [], over_fences: false,
    });
  });
  it("counts down to a standing start only", () => {
    const chosen = { ...NOTHING_CHOSEN, countdown_s: 5 };
    assert.equal(planOf(chosen, track, OUTING)?.countdown_s, null);
    assert.equal(planOf({ ...chosen, start: "standing" }, track, OUTING)?.countdown_s, 5);
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
