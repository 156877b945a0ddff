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

test("the present level stands beside, and an ending that only one of the two has counts nought at the other", () => {
  const rows = endings({
    spoken: true, text: "", elimination_chance: 0.1, jumping_penalties: [{ penalties: 0, chance: 0.6 }, { penalties: 20, chance: 0.3 }],
    present_level: {
      level_id: "lowest", level_name: "Lowest", clear_chance: 0.8, clear_low: 0.7, clear_high: 0.9, elimination_chance: 0.05, total: null,
      jumping_penalties: [{ penalties: 0, chance: 0.8 }, { penalties: 60, chance: 0.15 }],
    },
  });
  assert.deepEqual(rows, [
    { ending: 0, chance: 0.6, present: 0.8 }, { ending: 20, chance: 0.3, present: 0 },
    { ending: 60, chance: 0, present: 0.15 }, { ending: "not_completed", chance: 0.1, present: 0.05 },
  ]);
});
