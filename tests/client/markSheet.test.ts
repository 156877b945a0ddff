// The line of marks: typed or tapped, it reads the same.

import assert from "node:assert/strict";
import { describe, it } from "node:test";
import { type PadKey, press, readMarks, writeMarks } from "../../webclient/src/screens/results/markSheet.ts";

describe("a line of marks", () => {
  it("reads marks, halves and coefficients", () => {
    assert.deepEqual(readMarks("6 6.5 7x2").marks, [
      { movement: "1", mark: 6, coefficient: 1 }, { movement: "2", mark: 6.5, coefficient: 1 }, { movement: "3", mark: 7, coefficient: 2 },
    ]);
  });
  it("takes a decimal comma, commas between, semicolons and new lines", () => {
    assert.deepEqual(readMarks("6,5, 7; 10\n8×2,").marks.map((one) => [one.mark, one.coefficient]), [[6.5, 1], [7, 1], [10, 1], [8, 2]]);
  });
  it("names what it cannot read and keeps the rest", () => {
    const { marks, unread } = readMarks("6 11 seven 10.5 7x9 8");
    assert.deepEqual(marks.map((one) => one.mark), [6, 8]);
    assert.deepEqual(unread, ["11", "seven", "10.5", "7x9"]);
  });
  it("of nothing is nothing", () => assert.deepEqual(readMarks("  "), { marks: [], unread: [] }));
  it("comes back from what was written", () => {
    const line = "6 6.5 7x2 10 0.5x2";
    assert.equal(writeMarks(readMarks(line).marks), line);
  });
});

describe("the keypad", () => {
  const taps = (...keys: (PadKey | number)[]) => keys.reduce<string>((line, key) => press(line, typeof key === "number" ? { whole: key } : key), "");
  it("writes the line", () => assert.equal(taps(6, 6, "half", 7, "double"), "6 6.5 7x2"));
  it("undoes half and double by the same key, and a mark by going back", () => {
    assert.equal(taps(6, "half", "half", 7, "double", "double", 8, "back"), "6 7");
  });
  it("never goes above ten", () => assert.equal(taps(10, "half"), "10"));
  it("does nothing on an empty line", () => assert.equal(taps("half", "double", "back"), ""));
  it("keeps what it cannot read in sight", () => assert.equal(press("oops 6", { whole: 7 }), "oops 6 7"));
});
