// What screens read out of a rulebook, and a round's penalties by it.

import assert from "node:assert/strict";
import { describe, it } from "node:test";
import { type Round, roundScore } from "../../webclient/src/pace/jumping.ts";
import { courseSpeeds, dressageRules, type Level, timeRules, value } from "../../webclient/src/pace/levels.ts";

const stated = (number: number) => ({ value: number, unit: "", source: "made up for this test", grade: "from_memory" });
const LEVEL: Level = {
  id: "novice", name: "Novice", order: 2,
  phases: {
    cross_country: { speed_min_mpm: stated(350), speed_max_mpm: stated(400), time_limit_factor: stated(2) },
    show_jumping: {
      knockdown_penalties: stated(4), refusal_first_penalties: stated(4), refusal_second_penalties: stated(8),
      stops_that_eliminate: stated(3), rider_falls_that_eliminate: stated(1), jump_penalties_that_retire: stated(20),
    },
    dressage: { error_first_marks: stated(2) },
  },
};
const BARE: Level = { ...LEVEL, phases: {} };

describe("a level", () => {
  it("tells its speeds as a range", () => assert.deepEqual(courseSpeeds(LEVEL), [350, 400]));
  it("with one speed tells that", () => {
    assert.deepEqual(courseSpeeds({ ...BARE, phases: { cross_country: { speed_mpm: stated(520) } } }), [520, 520]);
  });
  it("that states nothing says nothing", () => {
    assert.equal(courseSpeeds(BARE), null);
    assert.equal(value(null, "dressage", "percent_decimals"), null);
    assert.equal(timeRules(null).time_limit_factor, null);
  });
  it("hands its rules on under their own names", () => {
    assert.equal(timeRules(LEVEL).time_limit_factor, 2);
    assert.deepEqual([dressageRules(LEVEL).error_first_marks, dressageRules(LEVEL).error_second_marks], [2, null]);
  });
});

describe("a jumping round", () => {
  const round = (more: Partial<Round>): Round => ({ knockdowns: 0, refusals: 0, rider_fall: false, horse_fall: false, ...more });
  const cases: [string, Partial<Round>, ReturnType<typeof roundScore>][] = [
    ["clear", {}, { is: "penalties", penalties: 0 }],
    ["two down", { knockdowns: 2 }, { is: "penalties", penalties: 8 }],
    ["one down and two refusals: 4 + 4 + 8", { knockdowns: 1, refusals: 2 }, { is: "penalties", penalties: 16 }],
    ["a third refusal", { refusals: 3 }, { is: "eliminated" }],
    ["a fall of the rider", { rider_fall: true }, { is: "eliminated" }],
    ["a fall of the horse, which this level does not price", { horse_fall: true }, { is: "unstated" }],
    ["twenty penalties", { knockdowns: 5 }, { is: "eliminated" }],
  ];
  for (const [name, more, score] of cases) it(name, () => assert.deepEqual(roundScore(round(more), LEVEL), score));
  it("is not summed where the rulebook states no price", () => {
    assert.deepEqual(roundScore(round({ knockdowns: 1 }), BARE), { is: "unstated" });
    assert.deepEqual(roundScore(round({}), BARE), { is: "penalties", penalties: 0 });
  });
});
