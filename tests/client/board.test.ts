import assert from "node:assert/strict";
import { test } from "node:test";
import { byAttention, causeOf, type Fact } from "../../webclient/src/board/attention.ts";
import { dots, spanDays } from "../../webclient/src/board/evidencePicture.ts";
import { aimOf, byPhase, ladder, mostUrgentFirst, withinReach } from "../../webclient/src/board/ladder.ts";
import { aboutIds, isAllClear, outingTimeline } from "../../webclient/src/board/outingTimeline.ts";
import type { EvidenceLine, Finding, Standing } from "../../webclient/src/board/standing.ts";
import { newestWord } from "../../webclient/src/board/words.ts";
import type { Attempt, TimedCanter, Word } from "../../webclient/src/entries/bodies.ts";

const counts = { shown: 0, building: 0, untried: 0, shaky: 0, gone_stale: 0, on_hold: 0 };

function standing(level_id: string, level_order: number, complete = false, horse_id = "h1"): Standing {
  return {
    logbook_number: 1, horse_id, rulebook_id: "r", level_id, level_name: level_id, level_order, as_of: "2026-06-01",
    summary: { counts, required: 1, complete, sentence: "" }, findings: [], next: [], forecast: null, cautions: [],
  };
}

function line(local_date: string, outcome: string | null, weight: number | null = 1): EvidenceLine {
  return { record_id: local_date + outcome, kind: "attempt", local_date, label: "", outcome, weight };
}

function finding(phase: Finding["phase"], state: Finding["state"]): Finding {
  return {
    requirement_id: phase + state, phase, title: "", state, required: true,
    reasons: [], needs: [], numbers: {}, evidence: [], explanation: "",
  };
}

test("a ladder holds one horse's levels from low to high", () => {
  const mixed = [standing("b", 1), standing("x", 0, false, "h2"), standing("a", 0)];
  assert.deepEqual(ladder(mixed, "h1").map((each) => each.level_id), ["a", "b"]);
});

test("a pair aims at the level above its present one", () => {
  const levels = [standing("a", 0), standing("b", 1), standing("c", 2)];
  assert.equal(aimOf(levels, "a")?.level_id, "b");
  assert.equal(aimOf(levels, "c")?.level_id, "c");
});

test("without a present level a pair aims at the lowest level not complete", () => {
  const levels = [standing("a", 0, true), standing("b", 1), standing("c", 2)];
  assert.equal(aimOf(levels, null)?.level_id, "b");
  assert.equal(aimOf([], null), undefined);
});

test("findings are grouped by phase in the board's order, trouble first", () => {
  const groups = byPhase([finding("word", "shown"), finding("cross_country", "shown"), finding("cross_country", "shaky")]);
  assert.deepEqual(groups.map((group) => group.phase), ["cross_country", "word"]);
  assert.deepEqual(mostUrgentFirst(groups[0]!.findings).map((each) => each.state), ["shaky", "shown"]);
});

test("the picture spans at least sixty days and ends at the day of the standing", () => {
  assert.equal(spanDays([line("2026-05-30", "clear")], "2026-06-01"), 60);
  const [old, today] = dots([line("2026-01-01", "clear"), line("2026-06-01", "refusal")], "2026-06-01");
  assert.deepEqual([old!.across, today!.across], [0, 1]);
  assert.deepEqual([old!.lane, today!.lane], ["good", "bad"]);
});

test("marks of one day and lane are stacked, and a faded one can still be seen", () => {
  const placed = dots([line("2026-05-01", "clear", 0), line("2026-05-01", "clear"), line("2026-05-01", "run_out")], "2026-06-01");
  assert.deepEqual(placed.map((dot) => dot.stack), [0, 1, 0]);
  assert.equal(placed[0]!.size, 0.35);
});

function fact(title: string, told: Partial<Fact>): Fact {
  return {
    logbook_id: title, title, last_outing: "2026-05-01", unanswered: 0,
    stops_in_last_outing: 0, falls_in_last_outing: 0, words_lapsing: 0, ...told,
  };
}

test("a coach sees the unanswered fall first and the quiet book last", () => {
  const facts = [
    fact("quiet", { last_outing: null }),
    fact("stops", { unanswered: 1, stops_in_last_outing: 2 }),
    fact("fall", { unanswered: 1, falls_in_last_outing: 1 }),
    fact("answered", { falls_in_last_outing: 1 }),
    fact("new", { unanswered: 1 }),
    fact("lapsing", { words_lapsing: 1 }),
  ];
  const order = byAttention(facts).map((each) => each.title);
  assert.deepEqual(order, ["fall", "lapsing", "stops", "new", "answered", "quiet"]);
  assert.equal(causeOf(facts[3]!), "nothing");
});

test("a board shows the ladder up to one level above the aim", () => {
  const levels = ["a", "b", "c", "d"].map((id, order) => standing(id, order));
  const { near, beyond } = withinReach(levels, levels[1]);
  assert.deepEqual([near.length, beyond.map((each) => each.level_id)], [3, ["d"]]);
  assert.equal(withinReach(levels, undefined).near.length, 4);
});

test("attempts at one fence in a row stand together, a canter between them apart", () => {
  const at = (minute: number) => `2026-05-01T10:0${minute}:00.000Z`;
  const attempt = (id: string, fence_id: string, minute: number, outcome = "clear") =>
    ({ record_id: id, recorded_at: at(minute), body: { fence_id, sequence_id: null, outcome } as unknown as Attempt });
  const canter = { record_id: "c", recorded_at: at(3), body: {} as TimedCanter };
  const items = outingTimeline([attempt("1", "f", 1), attempt("2", "f", 2), attempt("3", "f", 4, "refusal")], [canter]);
  assert.deepEqual(items.map((item) => item.what), ["attempts", "canter", "attempts"]);
  assert.deepEqual(aboutIds(items[0]!), ["1", "2"]);
  assert.deepEqual(items.map(isAllClear), [true, true, false]);
});

test("the newest word on a level stands; one not yet sent is the newest of all", () => {
  const word = (reason: string, number: number | null, level_id = "l") =>
    ({ number, recorded_at: "2026-05-01T10:00:00.000Z", body: { rulebook_id: "r", level_id, reason } as unknown as Word });
  const words = [word("old", 3), word("unsent", null), word("new", 9), word("elsewhere", 12, "m")];
  assert.equal(newestWord(words, "r", "l")?.body.reason, "unsent");
  assert.equal(newestWord(words.filter((each) => each.number !== null), "r", "l")?.body.reason, "new");
  assert.equal(newestWord(words, "other", "l"), undefined);
});
