import assert from "node:assert/strict";
import { test } from "node:test";
import { readCorrection } from "../../webclient/src/levels/correction.ts";
import { inOrder, levelRows, valueWords } from "../../webclient/src/levels/rows.ts";
import type { Level, Rulebook } from "../../webclient/src/pace/levels.ts";

const stated = (value: number, unit: string) => ({ value, unit, source: "s", grade: "secondary" });
const level: Level = {
  id: "l", name: "L", order: 1,
  phases: {
    show_jumping: { height_cm: stated(90, "cm") },
    cross_country: { refusal_first_penalties: stated(20, "penalties"), fixed_height_cm: stated(90, "cm"), speed_max_mpm: stated(400, "m/min") },
  },
};

const quantity = (unit: string) => ({ unit, least: 0, most: 900, whole: false });
const book: Rulebook = {
  id: "b", title: "B", edition: "e", levels: [level],
  quantities: { cross_country: { drop_cm: quantity("cm"), fixed_height_cm: quantity("cm") }, entry: { horse_age_min_years: quantity("years") } },
};
const plain = (quantity: string) => quantity;

test("rows stand by phase, the course before its scoring, and what is not stated among them", () => {
  const rows = levelRows(book, level, "", plain);
  const quantities = ["fixed_height_cm", "speed_max_mpm", "drop_cm", "refusal_first_penalties", "height_cm", "horse_age_min_years"];
  assert.deepEqual(rows.map((row) => row.quantity), quantities);
  assert.deepEqual(rows.filter((row) => !row.stated).map((row) => [row.quantity, row.unit]), [["drop_cm", "cm"], ["horse_age_min_years", "years"]]);
});

test("a rulebook that an older server sent shows what it states", () => {
  const { quantities: _, ...bare } = book;
  assert.equal(levelRows(bare, level, "", plain).length, 4);
});

test("a search finds by the name a person reads", () => {
  const names: Record<string, string> = { speed_max_mpm: "Speed, at most" };
  assert.deepEqual(levelRows(book, level, " speed ", (q) => names[q] ?? "").map((row) => row.quantity), ["speed_max_mpm"]);
});

test("rulebooks in force stand before the older editions, each by title", () => {
  const of = (title: string, status?: string): Rulebook => ({ id: title, title, edition: "", levels: [], ...(status && { status }) });
  const { current, older } = inOrder([of("C", "current"), of("B", "older"), of("A"), of("Z", "current"), of("A", "older")]);
  assert.deepEqual([current, older].map((books) => books.map(({ title }) => title)), [["A", "C", "Z"], ["A", "B"]]);
});

test("lengths read in the person's units, counts without one", () => {
  const cm = (value: number) => `${value} cm`;
  const m = (value: number) => `${value} m`;
  assert.equal(valueWords(90, "cm", cm, m), "90 cm");
  assert.equal(valueWords(2200, "m", cm, m), "2200 m");
  assert.equal(valueWords(3, "count", cm, m), "3");
  assert.equal(valueWords(0.4, "penalties", cm, m), "0.4 penalties");
});

test("a correction is read with comma or point, and in feet", () => {
  assert.equal(readCorrection("0,4", "penalties"), 0.4);
  assert.equal(readCorrection("2'11\"", "cm"), 88.9);
  assert.equal(readCorrection("2200", "m"), 2200);
  assert.equal(readCorrection("0.9", "cm"), 0.9, "the range says that this cannot be meant");
  assert.equal(readCorrection("many", "count"), null);
  assert.equal(readCorrection("", "count"), null);
});
