import assert from "node:assert/strict";
import { test } from "node:test";
import { readCorrection } from "../../webclient/src/levels/correction.ts";
import { levelRows, valueWords } from "../../webclient/src/levels/rows.ts";
import type { Level } from "../../webclient/src/pace/levels.ts";

const stated = (value: number, unit: string) => ({ value, unit, source: "s", grade: "secondary" });
const level: Level = {
  id: "l", name: "L", order: 1,
  phases: {
    show_jumping: { height_cm: stated(90, "cm") },
    cross_country: { refusal_first_penalties: stated(20, "penalties"), fixed_height_cm: stated(90, "cm"), speed_max_mpm: stated(400, "m/min") },
  },
};

test("rows stand by phase, the course before its scoring", () => {
  const rows = levelRows(level, "", (quantity) => quantity);
  assert.deepEqual(rows.map((row) => row.quantity), ["fixed_height_cm", "speed_max_mpm", "refusal_first_penalties", "height_cm"]);
});

test("a search finds by the name a person reads", () => {
  const names: Record<string, string> = { speed_max_mpm: "Speed, at most" };
  assert.deepEqual(levelRows(level, " speed ", (q) => names[q] ?? "").map((row) => row.quantity), ["speed_max_mpm"]);
});

test("lengths read in the person's units, counts without one", () => {
  const cm = (value: number) => `${value} cm`;
  const m = (value: number) => `${value} m`;
  assert.equal(valueWords(stated(90, "cm"), cm, m), "90 cm");
  assert.equal(valueWords(stated(2200, "m"), cm, m), "2200 m");
  assert.equal(valueWords(stated(3, "count"), cm, m), "3");
  assert.equal(valueWords(stated(0.4, "penalties"), cm, m), "0.4 penalties");
});

test("a correction is read with comma or point, and in feet", () => {
  assert.equal(readCorrection("0,4", "penalties"), 0.4);
  assert.equal(readCorrection("2'11\"", "cm"), 88.9);
  assert.equal(readCorrection("2200", "m"), 2200);
  assert.equal(readCorrection("many", "count"), null);
  assert.equal(readCorrection("", "count"), null);
});
