// From a finger to a kept record: bounce, saving, failing, undo.

import assert from "node:assert/strict";
import { test } from "node:test";
import { bounceFilter, BOUNCE_MS } from "../../webclient/src/recording/bounce.ts";
import { lastKnown } from "../../webclient/src/recording/lastKnown.ts";
import { addTap, dropTap, markTap, recovered, withoutKept, withTaps } from "../../webclient/src/recording/taps.ts";
import { newestOwn, UNDO_REACHES_MS } from "../../webclient/src/recording/undo.ts";
import { isFall, isShowJump, isStop, outcomesBesideClear, wentOver } from "../../webclient/src/recording/outcomes.ts";
import { OUTCOMES } from "../../webclient/src/entries/bodies.ts";
import { attemptAt, fence, record } from "./recordingSamples.ts";

test("taps at 0, 120, 400 and 900 ms: the one at 120 ms is a bounce, the others were meant", () => {
  const accepts = bounceFilter();
  assert.deepEqual([0, 120, 400, 900].map((at) => accepts("clear", at)), [true, false, true, true]);
});

test("each control bounces by itself, and a dropped tap does not put off the next", () => {
  const accepts = bounceFilter();
  assert.deepEqual([accepts("clear", 0), accepts("refusal", 20)], [true, true]);
  assert.deepEqual([accepts("clear", BOUNCE_MS - 1), accepts("clear", BOUNCE_MS)], [false, true]);
});

test("a page whose clock of events begins anew takes the first tap", () => {
  const accepts = bounceFilter();
  accepts("clear", 90_000);
  assert.equal(accepts("clear", 100), true);
});

test("a tap is shown while it is being saved, and once only when it is kept", () => {
  const kept = record(attemptAt("log"), 1000);
  const taps = addTap(addTap([], kept.record_id, kept.body, new Date(1000)), "new", attemptAt("log"), new Date(2000));
  assert.deepEqual(withTaps([kept], taps, "o").map((tap) => tap.record_id), [kept.record_id, "new"]);
  assert.deepEqual(withTaps([kept], taps, "another outing").map((tap) => tap.record_id), [kept.record_id]);
  assert.deepEqual(withTaps([kept], taps, "o", new Set(["new"])).length, 1);
});

test("a tap that could not be saved stays until it is tried again or given up", () => {
  const failed = markTap(addTap([], "t", attemptAt("log"), new Date(0)), "t", "not_saved");
  assert.equal(failed[0]!.state, "not_saved");
  assert.deepEqual(withoutKept(failed, new Set(["t"])), failed);
  assert.deepEqual(withoutKept(markTap(failed, "t", "saved"), new Set(["t"])), []);
  assert.deepEqual(dropTap(failed, "t"), []);
});

test("taps read back after a kill are not claimed to be saved; anything else stored there is ignored", () => {
  const [tap] = addTap([], "t", attemptAt("log"), new Date(0));
  assert.deepEqual(recovered(JSON.parse(JSON.stringify([tap, { record_id: 3 }, null]))), [{ ...tap, state: "not_saved" }]);
  for (const stored of [null, undefined, "x", {}]) assert.deepEqual(recovered(stored), []);
});

test("undo takes back this person's newest tap, then the one before, never the scribe's or last month's", () => {
  const by = (author: string | null, at: number) => ({ ...record(attemptAt("log"), at), author });
  const now = 100 * UNDO_REACHES_MS;
  const attempts = [by("me", now - 3000), by("me", now - 2000), by("scribe", now - 1000)];
  assert.equal(newestOwn(attempts, "me", now), attempts[1]);
  assert.equal(newestOwn([attempts[0]!, attempts[2]!], "me", now), attempts[0]);
  assert.equal(newestOwn([by("me", now - UNDO_REACHES_MS)], "me", now), null);
  const coming = record(attemptAt("log"), now);
  assert.equal(newestOwn<typeof coming & { author?: string | null }>([...attempts, coming], "me", now), coming);
});

test("while a screen asks again it shows what it last knew, each screen its own", () => {
  assert.equal(lastKnown("fences", undefined), undefined);
  assert.equal(lastKnown("fences", 9), 9);
  assert.equal(lastKnown("fences", undefined), 9);
  assert.equal(lastKnown("attempts", undefined), undefined);
});

test("every outcome is clear, a stop, a fall, or neither", () => {
  for (const outcome of OUTCOMES) assert.ok(!(isStop(outcome) && isFall(outcome)), outcome);
  assert.deepEqual(OUTCOMES.filter(wentOver), ["clear", "knockdown", "missed_flag"]);
});

test("a knockdown is offered only where poles can fall", () => {
  assert.deepEqual(["clear", ...outcomesBesideClear(true)].sort(), [...OUTCOMES].sort());
  assert.deepEqual(outcomesBesideClear(false), ["refusal", "run_out", "circle", "missed_flag", "retired", "rider_fall", "horse_fall"]);
  assert.ok(isShowJump(fence({ label: "Cross", profile: "cross_pole" }), "cross_country_school"));
  assert.ok(isShowJump(fence({ label: "1", profile: "oxer" }), "jumping_school"));
  assert.ok(!isShowJump(fence({ label: "Oxer", profile: "oxer" }), "cross_country_school"));
});
