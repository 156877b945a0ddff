// This canter among the last ones, and the picture of them.

import assert from "node:assert/strict";
import { describe, it } from "node:test";
import type { TimedCanter } from "../../webclient/src/entries/bodies.ts";
import { lastCanters, type Ridden, SHOWN, stepSince } from "../../webclient/src/pace/comparison.ts";
import { HEIGHT, picture, WIDTH } from "../../webclient/src/pace/picture.ts";

const TRACK = "018f0000-0000-7000-8000-000000000010";
let made = 0;

function ridden(elapsed_ms: number, more: Partial<TimedCanter> = {}): Ridden {
  made += 1;
  const body: TimedCanter = {
    outing_id: "018f0000-0000-7000-8000-000000000001", track_id: TRACK, distance_m: 400, distance_u_m: null, measured_by: "wheel",
    elapsed_ms, monotonic_ms: null, wall_ms: null, clock: "agree", splits_ms: [], target_speed_mpm: 400, level_id: null,
    start: "flying", countdown_s: null, set_id: null, flags_m: [], over_fences: false, note: null, ...more,
  };
  const moment = String(made).padStart(12, "0");
  return { record_id: `018f0000-${moment.slice(8)}-7000-8000-000000000000`, recorded_at: "2026-05-03T09:12:00Z", local_date: "2026-05-03", body };
}

describe("the last canters", () => {
  it("are those over the same track, oldest first, this one last and marked", () => {
    const [first, elsewhere, second, now] = [ridden(60_000), ridden(60_000, { track_id: null }), ridden(61_000), ridden(62_000)];
    const compared = lastCanters(now, [now, second, elsewhere, first]);
    assert.deepEqual(compared.map((one) => [one.ridden.record_id, one.current]), [[first.record_id, false], [second.record_id, false], [now.record_id, true]]);
  });
  it("without a track are those over the same distance", () => {
    const bare = { track_id: null };
    const [same, other, now] = [ridden(60_000, bare), ridden(60_000, { ...bare, distance_m: 500 }), ridden(61_000, bare)];
    assert.equal(lastCanters(now, [same, other, now]).length, 2);
  });
  it("leave out what came later, and keep to the newest few", () => {
    const many = Array.from({ length: 20 }, () => ridden(60_000));
    assert.equal(lastCanters(many[3] as Ridden, many).length, 4);
    const compared = lastCanters(many[19] as Ridden, many);
    assert.deepEqual([compared.length, compared.at(-1)?.current], [SHOWN, true]);
  });
});

describe("the step since the last one", () => {
  const step = (...times: number[]) => {
    const all = times.map((time) => ridden(time));
    return stepSince(lastCanters(all.at(-1) as Ridden, all)).step;
  };
  it("is none for the first", () => assert.equal(step(60_000), "first"));
  it("cannot be told within a quarter of a second", () => assert.equal(step(60_000, 60_250), "same"));
  it("is told from there on", () => {
    assert.equal(step(60_000, 60_400), "slower");
    assert.equal(step(60_000, 59_500), "faster");
  });
});

describe("the picture", () => {
  const draw = (target: number | null, ...times: number[]) => {
    const all = times.map((time) => ridden(time));
    return picture(lastCanters(all.at(-1) as Ridden, all), target);
  };
  it("keeps every mark, bar, band and tick inside, whatever the times", () => {
    for (const times of [[60_000], [60_000, 60_000, 60_000], [500, 7_200_000], [60_000, 30_000, 90_000, 20_000]]) {
      for (const target of [null, 50, 400, 1000]) {
        const drawn = draw(target, ...times);
        const ys = [...drawn.marks.flatMap((mark) => [mark.y, mark.low_y, mark.high_y]), ...drawn.ticks.map((tick) => tick.y)];
        if (drawn.target) ys.push(drawn.target.y, drawn.target.band_top, drawn.target.band_top + drawn.target.band_height);
        for (const y of ys) assert.ok(y >= 0 && y <= HEIGHT, `${y} at ${times} against ${target}`);
        for (const { x } of drawn.marks) assert.ok(x > 0 && x < WIDTH);
        assert.ok(drawn.ticks.length >= 2 && drawn.ticks.length <= 8, `${drawn.ticks.length} ticks`);
      }
    }
  });
  it("puts faster above slower, and the target between", () => {
    const { marks, target } = draw(400, 62_000, 58_000);
    const [slow, fast] = marks;
    assert.ok(slow && fast && target && fast.y < target.y && target.y < slow.y);
  });
  it("without a target has no band", () => assert.equal(draw(null, 60_000).target, null));
});
