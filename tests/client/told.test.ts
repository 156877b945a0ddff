// What the server says, in the person's language and units.

import assert from "node:assert/strict";
import { test } from "node:test";

import type { Finding, PlanStep, Reason } from "../../webclient/src/board/standing.ts";
import { missingOf, moved } from "../../webclient/src/board/whatIf.ts";
import { canBeDrawn, dots } from "../../webclient/src/board/evidencePicture.ts";
import { units } from "../../webclient/src/units/index.ts";
import { german } from "../../webclient/src/words/german.ts";
import { british } from "../../webclient/src/words/british.ts";

// as the build folds them
function folded(words: object): object {
  const areas: { [area: string]: { [rest: string]: unknown } } = {};
  for (const [key, text] of Object.entries(words)) {
    const area = key.slice(0, key.indexOf("."));
    (areas[area] ??= {})[key.slice(area.length + 1)] = text;
  }
  return areas;
}

Object.assign(globalThis, {
  __WORDS__: { "en-GB": "en-GB", "en-US": "en-US", de: "de" },
  document: { documentElement: { lang: "" } },
  caches: { open: async () => ({ match: async () => undefined, put: async () => undefined, keys: async () => [], delete: async () => true }), match: async () => undefined },
  fetch: async (url: string) => new Response(JSON.stringify(folded(url === "de" ? german : url === "en-GB" ? british : {}))),
});
const { chooseLanguage } = await import("../../webclient/src/words/index.ts");
const { toldMeasured, toldPlanStep, toldReason, toldStep, toldText, toldWorkedOut } = await import("../../webclient/src/words/told.ts");

const smaller: Reason = { code: "smaller", values: { attempts: 3, least_cm: 85.5 }, text: "3 attempts at a smaller fence: it counts from 86 cm." };
const hold: Reason = { code: "hold", values: { author: "a", reason: "Nothing over 60 cm." }, text: "Hold: Nothing over 60 cm." };

function finding(parts: Partial<Finding>): Finding {
  return { requirement_id: "brush", phase: "cross_country", title: "Brush", state: "building", required: true, reasons: [], needs: [], numbers: {}, evidence: [], ...parts };
}

test("a length is said in the person's own units, a speed in the trade's, and the coach's own words stay", async () => {
  await chooseLanguage("en-GB");
  units.value = "imperial";
  assert.equal(toldReason(smaller).words, "3 attempts at a smaller fence: it counts from 2'10\".");
  assert.equal(toldMeasured("400 m at 400 m/min").words, "437.4 yd at 400 m/min");
  assert.equal(toldMeasured("Round at 95 cm").words, "Round at 3'1\"");
  assert.equal(toldMeasured("50 min").words, "50 min");
  assert.equal(toldReason(hold).words, "Hold: Nothing over 60 cm.");
  assert.equal(toldWorkedOut(finding({ explanation: "Rounds at 95 cm count." })).words, "Rounds at 3'1\" count.");
  const rounds = finding({ needs: [{ code: "more_rounds", values: {}, text: "Two more good rounds at 95 cm or higher." }] });
  const next = (text: string) => ({ text, requirement_id: "rounds_at_height", fence_ids: [], presentation: {}, times: 2 });
  assert.equal(toldStep(next("Jumping rounds: two more good rounds at 95 cm or higher."), rounds).words, "Jumping rounds: two more good rounds at 3'1\" or higher.");
  const tables = finding({ needs: [{ code: "measure", values: {}, text: "Measure 4 Table 60 cm." }] });
  assert.equal(toldStep(next("Table: measure 4 Table 60 cm."), tables).words, "Table: measure 4 Table 60 cm.");
  units.value = "metric";
  assert.equal(toldReason(smaller).words, smaller.text);
});

test("German says what was measured and how a finding is worked out, and English what it has no words for", async () => {
  await chooseLanguage("de");
  assert.deepEqual(toldMeasured("Round at 95 cm"), { words: "Parcours auf 95 cm" });
  assert.deepEqual(toldMeasured("1 rail, 0 stops"), { words: "1 Abwurf, 0 Verw." });
  assert.deepEqual(toldMeasured("67.3 %"), { words: "67,3 %" });
  for (const text of ["400 m at 400 m/min", "399 ± 4 m/min", "4 of 5", "50 min", "52 beats per minute", "clean", "not clean", "fall", "not completed"])
    assert.equal(toldMeasured(text).lang, undefined, text);
  const worked_out = [{ code: "worked_none", values: { days: 730 } }, { code: "worked_guess", values: { chance: 80 } }];
  assert.equal(toldWorkedOut(finding({ worked_out })).words, "In den letzten 730 Tagen zählt hier kein Versuch. Daraus allein könnte man eine Chance von 80 % vermuten, aber eine Vermutung zeigt nichts.");
  const unknown = finding({ explanation: "New.", worked_out: [{ code: "worked_anew", values: {} }] });
  assert.deepEqual(toldWorkedOut(unknown), { words: "New.", lang: "en" });
  units.value = "imperial";
  assert.equal(toldReason(smaller).words, "Versuche an kleineren Hindernissen: 3. Es zählt ab 2'10\".");
  units.value = "metric";
  await chooseLanguage("en-GB");
});

test("a step of a plan without a fence says what to do instead", async () => {
  const step: PlanStep = { part: "warm_up", fence_id: null, label: "", times: 1, requirement_id: null, presentation: {}, text: "Nothing here is shown yet: end on the easiest fence that went well today." };
  assert.equal(toldPlanStep(step, undefined).words, step.text);
  await chooseLanguage("de");
  assert.deepEqual(toldPlanStep(step, undefined), toldText(step.text));
  assert.equal(toldText(step.text).lang, undefined);
  await chooseLanguage("en-GB");
});

test("a what-if shows other states first, then what would be nearer or further", () => {
  const need = (text: string): Reason[] => [{ code: "more_clear", values: {}, text }];
  const before = { findings: [finding({ needs: need("Two more clear.") }), finding({ requirement_id: "corner" }), finding({ requirement_id: "narrow", state: "untried" })] };
  const after = { findings: [finding({ needs: need("One more clear.") }), finding({ requirement_id: "corner" }), finding({ requirement_id: "narrow", state: "building" })] };
  const found = moved({ before, after } as never);
  assert.deepEqual(found.map((each) => each.requirement_id), ["narrow", "brush"]);
  assert.equal(missingOf(found[1]!.after)[0]?.text, "One more clear.");
  assert.deepEqual(moved({ before, after: { findings: [before.findings[0], before.findings[2]] } } as never).map((each) => [each.requirement_id, each.after]), [["corner", null]]);
});

test("only what can be good or not is drawn so: a bold horse is good, a canter is neither", () => {
  const line = (kind: string, outcome: string) => ({ record_id: outcome, kind, local_date: "2026-06-01", label: "", outcome, weight: 1 });
  assert.deepEqual(dots([line("attempt", "bold"), line("attempt", "backed_off"), line("event_result", "clean")], "2026-06-02").map(({ lane }) => lane), ["good", "bad", "good"]);
  assert.equal(canBeDrawn([line("attempt", "clear"), line("attempt", "refusal")]), true);
  assert.equal(canBeDrawn([line("timed_canter", "399 ± 4 m/min"), line("timed_canter", "402 ± 4 m/min")]), false);
});
