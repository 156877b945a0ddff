// The course card's arithmetic, against published examples.

import assert from "node:assert/strict";
import { describe, it } from "node:test";
import { BadInput } from "../../webclient/src/pace/badInput.ts";
import { clockWords, courseCard, courseTimes, markersOf, NO_RULES, timeAtSpeed } from "../../webclient/src/pace/course.ts";

describe("optimum time", () => {
  it("3150 m at 450 m/min is 7:00", () => {
    // Horse & Hound on the 2019 BE90 championship course.
    assert.equal(clockWords(timeAtSpeed(3150, 450)), "7:00");
  });
  it("2300 m at 600 m/min is 3:50, and not the 3:49 of rounding minutes before converting", () => {
    assert.equal(clockWords(timeAtSpeed(2300, 600)), "3:50");
  });
  it("2000 m at 520 m/min is 230.77 s, which every rounding shows as 3:51", () => {
    assert.deepEqual(["up", "nearest"].map((rounding) => timeAtSpeed(2000, 520, rounding as "up")), [231, 231]);
    assert.ok(Math.abs(timeAtSpeed(2000, 520, "none") - 230.769) < 0.001);
  });
  it("is not pushed over by a stray binary digit", () => {
    for (let second = 1; second <= 900; second += 1) {
      for (const speed of [312.3, 350, 420, 520.1, 570]) {
        const length = Math.round(speed * second) / 60;
        if (Number.isInteger(length * 1000)) assert.equal(timeAtSpeed(length, speed), Math.ceil((length * 60_000) / (speed * 1000) - 1e-9));
      }
    }
    assert.equal(timeAtSpeed(2340, 520), 270);
  });
});

describe("limit and too fast", () => {
  it("Novice, 1800 m at 360 with 450 as speed-fault speed: 300, 240 and 600 s", () => {
    // Worked by hand from the USEF form: limit twice the optimum, speed-fault time from its own speed.
    const times = courseTimes(1800, 360, { ...NO_RULES, time_limit_factor: 2, too_fast_speed_mpm: 450 });
    assert.deepEqual([times.optimum_s, times.fastest_s, times.limit_s], [300, 240, 600]);
  });
  it("a window of seconds under the optimum", () => {
    assert.equal(courseTimes(3150, 450, { ...NO_RULES, too_fast_window_s: 15 }).fastest_s, 405);
  });
  it("are unknown where the rulebook does not state them", () => {
    const { limit_s, fastest_s } = courseTimes(3150, 450, NO_RULES);
    assert.deepEqual([limit_s, fastest_s], [null, null]);
  });
});

describe("minute markers", () => {
  it("stand at every whole minute before the finish", () => {
    assert.deepEqual(markersOf(1000, 400).map((marker) => marker.distance_m), [400, 800]);
    assert.deepEqual(markersOf(350, 400), []);
  });
  it("never at the finish", () => assert.equal(courseCard(3150, 450, NO_RULES).minute_markers.length, 6));
  it("refuse what takes over an hour: a slip of the keys", () => {
    assert.throws(() => markersOf(31_500, 450), (error) => error instanceof BadInput && error.field === "length_m");
  });
});

it("refuses zero, negative and not-a-number", () => {
  for (const bad of [0, -1, Number.NaN, Number.POSITIVE_INFINITY]) {
    assert.throws(() => timeAtSpeed(bad, 450), BadInput);
    assert.throws(() => timeAtSpeed(3150, bad), BadInput);
  }
});
