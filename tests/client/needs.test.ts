// What is said of the way to the server, and mending what it refused.

import assert from "node:assert/strict";
import { test } from "node:test";

import { makeEntry } from "../../webclient/src/entries/entry.ts";
import { mendablePath, read, screenOf, unitOf, valueAt, withValue } from "../../webclient/src/screens/needs-you/mend.ts";
import type { EntryRow } from "../../webclient/src/store/db.ts";
import { QUIET, type SyncState } from "../../webclient/src/sync/state.ts";
import { stateWords } from "../../webclient/src/sync/stateWords.ts";
import { british } from "../../webclient/src/words/british.ts";

const at = (instant: string | number) => `at ${instant}`;
const words = (change: Partial<SyncState>) => stateWords({ ...QUIET, ...change }, at);
const TROUBLES = ["offline", "signed_out", "no_access", "server_trouble", "too_many", "too_old", "phone_trouble", "mismatch"] as const;

test("the one sentence: what needs somebody before what waits before what is done", () => {
  assert.deepEqual(words({}), { key: "sync.nothing_yet", values: {}, tone: "quiet" });
  assert.deepEqual(words({ last_sent_at_ms: 5 }), { key: "sync.all_sent", values: { at: "at 5" }, tone: "quiet" });
  assert.deepEqual(words({ waiting: 2, oldest_waiting: "t", last_sent_at_ms: 5 }).values, { n: 2, since: "at t" });
  assert.equal(words({ waiting: 2, oldest_waiting: "t", trouble: "offline" }).key, "sync.waiting_offline");
  assert.equal(words({ waiting: 2, oldest_waiting: "t", needs_you: 1 }).key, "sync.needs_you");
  assert.deepEqual(words({ phase: "sending", done: 500, total: 1200, needs_you: 1 }), { key: "sync.sending_of", values: { done: 500, total: 1200 }, tone: "waiting" });
});

test("it never says that all is sent while anything waits or the server did not know us", () => {
  for (const trouble of [null, ...TROUBLES]) assert.notEqual(words({ waiting: 1, trouble, last_sent_at_ms: 5 }).key, "sync.all_sent");
  assert.notEqual(words({ trouble: "signed_out", last_sent_at_ms: 5 }).key, "sync.all_sent");
});

test("every state has its words", () => {
  for (const trouble of TROUBLES) {
    for (const waiting of [0, 1]) assert.ok(words({ trouble, waiting, oldest_waiting: "t" }).key in british, trouble);
    assert.ok(`needs.trouble_${trouble}` in british, trouble);
  }
  for (const phase of ["sending", "fetching"] as const) for (const total of [0, 3]) assert.ok(words({ phase, total }).key in british);
});

function refused(field: string | null, body: object = { height_cm: -5, elements: [{ height_cm: 300 }], asks: ["ditch"], label: "1" }): EntryRow {
  const entry = { ...makeEntry("fence", null), body };
  return { ...entry, number: null, logbook_id: "l", state: "needs_you", refusal: { code: "out_of_range", field, message: "no", fix: null } };
}

test("the field that the server names is the one asked for again, as deep as it lies", () => {
  assert.deepEqual(mendablePath(refused("body.height_cm")), ["height_cm"]);
  assert.deepEqual(mendablePath(refused("body.elements.0.height_cm")), ["elements", "0", "height_cm"]);
  assert.deepEqual(mendablePath(refused("body.elements[0].height_cm")), ["elements", "0", "height_cm"]);
  for (const field of ["body.asks", "local_date", null, "body"]) assert.equal(mendablePath(refused(field)), null);
});

test("mending replaces one value and nothing else", () => {
  const { body } = refused("body.elements.0.height_cm");
  const mended = withValue(body as never, ["elements", "0", "height_cm"], 90);
  assert.deepEqual(mended, { height_cm: -5, elements: [{ height_cm: 90 }], asks: ["ditch"], label: "1" });
  assert.equal(valueAt(body as never, ["elements", "0", "height_cm"]), 300);
});

test("what is typed stays of its sort: numbers with point or comma, texts, nothing at all", () => {
  assert.deepEqual([read("85,5", -5), read("85.5", null), read("12", "Corner 1"), read(" ", "x"), read("abc", 3)], [85.5, 85.5, "12", null, "abc"]);
});

test("a value says its unit, and a record leads to the screen it is edited on", () => {
  assert.equal(unitOf("fence", ["elements", "0", "height_cm"]), "cm");
  assert.equal(unitOf("fence", ["label"]), null);
  const entry = refused("body.height_cm");
  assert.equal(screenOf(entry), `/fence/${entry.record_id}`);
  assert.equal(screenOf({ ...entry, kind: "bar_change" }), null);
});
