// The small parts of the stopwatch: event stamps, the face, cues, odd times, minute markers.

import assert from "node:assert/strict";
import { describe, it } from "node:test";
import { face, faceText, spokenParts } from "../../webclient/src/pace/clockface.ts";
import { cuesBetween } from "../../webclient/src/pace/cues.ts";
import { metresAfter, secondsFor, secondsPer100m } from "../../webclient/src/pace/markers.ts";
import { question } from "../../webclient/src/pace/plausible.ts";
import { readAt } from "../../webclient/src/pace/reading.ts";

describe("an event's own stamp", () => {
  const clocks = { monotonic: () => 10_000, wall: () => 1_777_000_000_000 };

  it("is used on both clocks, so that a busy page costs nothing", () => {
    assert.deepEqual(readAt(9_250.5, clocks), { monotonic_ms: 9_250.5, wall_ms: 1_777_000_000_000 - 749.5 });
  });

  it("a little in the future is rounding", () => {
    assert.equal(readAt(10_002, clocks).monotonic_ms, 10_002);
  });

  for (const stamp of [0, -1, 1_777_000_000_000, 10_100, 4_000, Number.NaN, Number.POSITIVE_INFINITY]) {
    it(`${stamp} cannot be one of this page's and the present is taken`, () => {
      assert.deepEqual(readAt(stamp, clocks), { monotonic_ms: 10_000, wall_ms: 1_777_000_000_000 });
    });
  }
});

describe("the face", () => {
  const cases: [number, string][] = [
    [0, "0.0"], [-5, "0.0"], [99, "0.0"], [100, "0.1"], [9_999, "9.9"], [47_300, "47.3"], [59_999.9, "59.9"],
    [60_000, "1:00.0"], [63_249, "1:03.2"], [600_000, "10:00.0"], [3_599_999, "59:59.9"], [3_723_400, "1:02:03.4"],
  ];
  for (const [ms, text] of cases) it(`${ms} ms reads ${text}`, () => assert.equal(faceText(ms), text));

  it("cuts tenths but forgives a floating-point hair", () => {
    assert.equal(faceText(63_199.999999999), "1:03.2");
    assert.deepEqual(face(63_180), { whole: "1:03", tenths: "1" });
  });

  it("is spoken in minutes and seconds", () => assert.deepEqual(spokenParts(63_249), { minutes: 1, seconds: "3.2" }));
});

describe("cues", () => {
  it("come at each minute and at the target, each once", () => {
    const seen = [];
    for (let at = 0; at < 190_000; at += 170) seen.push(...cuesBetween(at, at + 170, 63_000));
    assert.deepEqual(seen.map((cue) => [cue.kind, cue.at_ms]), [
      ["minute", 60_000], ["target", 63_000], ["minute", 120_000], ["minute", 180_000],
    ]);
  });

  it("a target on the minute is the target", () => {
    assert.deepEqual(cuesBetween(59_000, 61_000, 60_000), [{ kind: "target", at_ms: 60_000 }]);
  });

  it("missed in a hidden page are all told at once, in order, and none twice", () => {
    assert.deepEqual(cuesBetween(0, 125_000, 61_000).map((cue) => cue.at_ms), [60_000, 61_000, 120_000]);
    assert.deepEqual(cuesBetween(60_000, 60_000, 60_000), []);
  });
});

describe("times to ask about", () => {
  const cases: [number, number, string | null][] = [
    [0, 420, "too_short"], [499, 420, "too_short"], [Number.NaN, 420, "too_short"], [-3, 420, "too_short"],
    [500, 420, "too_fast"], [10_000, 420, "too_fast"], [63_200, 420, null], [25_000, 420, null], [250_000, 420, null],
    [300_000, 420, "too_slow"], [7_200_000, 420, "too_slow"], [7_200_001, 420, "too_long"], [7_200_000, 10_000 * 1.2, null],
  ];
  for (const [ms, metres, odd] of cases) it(`${ms} ms over ${metres} m: ${odd}`, () => assert.equal(question(ms, metres), odd));
});

describe("practising a speed", () => {
  // Seconds per 100 m: arithmetic (6000 / speed), as printed in course-walking advice; no single source.
  const table: [number, number][] = [[300, 20], [350, 17.1], [400, 15], [420, 14.3], [450, 13.3], [470, 12.8], [520, 11.5], [550, 10.9], [570, 10.5]];
  for (const [mpm, seconds] of table) it(`${mpm} m/min takes ${seconds} s per 100 m`, () => assert.equal(Number(secondsPer100m(mpm).toFixed(1)), seconds));

  it("3150 m at 450 m/min is seven minutes exactly", () => {
    // Horse & Hound on the 2019 BE90 championship course: 3150 m at 450 m/min, optimum 7:00.
    assert.equal(secondsFor(3_150, 450), 420);
  });

  it("metres after a time", () => assert.equal(metresAfter(30, 420), 210));
  it("refuses a speed of zero", () => assert.throws(() => secondsPer100m(0), /speed_mpm/));
});
