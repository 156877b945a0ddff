// A flatwork test's percentage, against published and hand-worked examples.

import assert from "node:assert/strict";
import { describe, it } from "node:test";
import { BadInput } from "../../webclient/src/pace/badInput.ts";
import { dressageScore, NO_DRESSAGE_RULES, penaltiesOf, sheetOf } from "../../webclient/src/pace/dressage.ts";

const marks = (...each: [number, number][]) => each.map(([mark, coefficient]) => ({ mark, coefficient }));
const twenty = (mark: number) => marks(...Array.from({ length: 20 }, (): [number, number] => [mark, 1]));

describe("percentage and penalties", () => {
  it("130 of 200 is 65 %, 35 penalties (worked example of a British coaching site)", () => {
    const score = dressageScore(twenty(6.5), 0, NO_DRESSAGE_RULES);
    assert.deepEqual(score.sheet, { marks: 130, maximum: 200 });
    assert.deepEqual([score.percent, score.penalties], [65, 35]);
  });
  it("77 % was 34.5 penalties with the coefficient of before 2018, and is 23 now", () => {
    assert.equal(penaltiesOf(77, { ...NO_DRESSAGE_RULES, penalty_coefficient: 1.5 }), 34.5);
    assert.equal(penaltiesOf(77, NO_DRESSAGE_RULES), 23);
  });
  it("counts coefficients, and half marks exactly", () => {
    assert.deepEqual(sheetOf(marks([6.5, 2], [7, 1], [5.5, 1])), { marks: 25.5, maximum: 40 });
  });
  it("rounds halves up, as on paper", () => {
    const rules = { ...NO_DRESSAGE_RULES, percent_decimals: 2 };
    assert.equal(dressageScore(marks([6, 1], [7, 1], [7, 1]), 0, rules).percent, 66.67);
    assert.equal(dressageScore(marks([6.125, 1]), 0, { ...rules, percent_decimals: 1 }).percent, 61.3);
  });
});

describe("errors", () => {
  // USEF EV136 as quoted in trade press: 2 marks, then 4, the third eliminates.
  const rules = { ...NO_DRESSAGE_RULES, error_first_marks: 2, error_second_marks: 4, errors_that_eliminate: 3 };
  it("come off the sum", () => {
    assert.equal(dressageScore(twenty(6.5), 1, rules).percent, 64);
    assert.equal(dressageScore(twenty(6.5), 2, rules).percent, 62);
  });
  it("eliminate at one more than the rulebook prices", () => {
    assert.deepEqual([3].map((errors) => dressageScore(twenty(6.5), errors, rules).eliminated), [true]);
  });
  it("without a rulebook's price are said not to be counted", () => {
    const score = dressageScore(twenty(6.5), 1, NO_DRESSAGE_RULES);
    assert.deepEqual([score.percent, score.errors_not_counted], [65, true]);
  });
  it("never bring a sheet below zero", () => assert.equal(dressageScore(marks([0.5, 1]), 2, rules).percent, 0));
});

it("refuses no marks, a mark above ten, below zero, and a coefficient of zero", () => {
  for (const bad of [[], marks([10.5, 1]), marks([-1, 1]), marks([7, 0]), marks([Number.NaN, 1])]) {
    assert.throws(() => sheetOf(bad), BadInput);
  }
});
