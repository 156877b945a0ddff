// Lengths, times and speeds against the vectors that Python runs too. Factors: international yard and pound
// agreement of 1959 (an inch is 2.54 cm, a yard 0.9144 m).

import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { test } from "node:test";

import { parseDistance, parseHeight, writeDistance, writeHeight, writeMetres } from "../../webclient/src/units/lengths.ts";
import { parseSpeed, parseTime, showTime } from "../../webclient/src/units/times.ts";

interface Vector {
  input: { read?: string; show?: string; text?: string; value?: number };
  expected: { value?: number; text?: string; refused?: string };
}

const vectors: Vector[] = JSON.parse(readFileSync(new URL("../../fixtures/contract/units.json", import.meta.url), "utf8"));

const READERS: Record<string, (text: string) => number | null> = {
  length_cm: parseHeight, distance_m: parseDistance, time_ms: parseTime, speed_mpm: parseSpeed,
};
const WRITERS: Record<string, (value: number) => string> = {
  cm: (cm) => writeHeight(cm, "metric"), feet: (cm) => writeHeight(cm, "imperial"), metres: writeMetres, time: showTime,
};

for (const { input, expected } of vectors) {
  test(`units: ${JSON.stringify(input)}`, () => {
    if (input.read) assert.equal(READERS[input.read]!(input.text!), "refused" in expected ? null : expected.value);
    else assert.equal(WRITERS[input.show!]!(input.value!), expected.text);
  });
}

test("a distance is shown in metres or yards", () => {
  assert.equal(writeDistance(420, "metric"), "420 m");
  assert.equal(writeDistance(420, "imperial"), "459.3 yd"); // 420 / 0.9144
});
