import assert from "node:assert/strict";
import { test } from "node:test";
import { endings } from "../../webclient/src/board/forecastRows.ts";

test("endings stand clear first and not completed last, and lose no chance", () => {
  const rows = endings({
    spoken: true, text: "", elimination_chance: 0.1,
    jumping_penalties: [{ penalties: 20, chance: 0.3 }, { penalties: 0, chance: 0.6 }],
  });
  assert.deepEqual(rows.map((row) => row.ending), [0, 20, "not_completed"]);
  assert.ok(Math.abs(rows.reduce((sum, row) => sum + row.chance, 0) - 1) < 1e-12);
});

test("a forecast that does not speak has no endings", () => {
  assert.deepEqual(endings({ spoken: false, text: "Not enough evidence." }), []);
});
