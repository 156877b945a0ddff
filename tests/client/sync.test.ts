// Sending and fetching against a server that loses replies, is restored, refuses, fails, or is not ours.

import assert from "node:assert/strict";
import { test } from "node:test";

import { LOGBOOK, newPlace } from "./storage.ts"; // first: the store looks for IndexedDB as it is loaded

import { makeEntry } from "../../webclient/src/entries/entry.ts";
import type { Place } from "../../webclient/src/store/place.ts";
import { writeBody, writeTakeBack } from "../../webclient/src/store/write.ts";
import { backOff } from "../../webclient/src/sync/backOff.ts";
import { emptyTally, type SyncContext } from "../../webclient/src/sync/context.ts";
import { countsAgree, readCursor } from "../../webclient/src/sync/cursor.ts";
import { syncLogbook } from "../../webclient/src/sync/engine.ts";
import { SyncStop } from "../../webclient/src/sync/stop.ts";
import { makeWire } from "../../webclient/src/sync/wire.ts";
import { json, page, PretendServer, problem } from "./pretendServer.ts";

function contextOf(place: Place, server: PretendServer, patience_ms = 2000): SyncContext {
  return {
    db: place.db, wire: makeWire(server.fetch, patience_ms), logbook_id: LOGBOOK,
    device: "33333333-3333-4333-8333-333333333333", app: "0.1.0", tally: emptyTally(), progress: () => {}, now: Date.now,
  };
}

async function trouble(work: Promise<void>): Promise<string | null> {
  return work.then(() => null, (error: unknown) => {
    if (error instanceof SyncStop) return error.trouble;
    throw error;
  });
}

const states = async (place: Place) => (await place.db.entries.toArray()).map((entry) => entry.state).sort();
const names = async (place: Place) => (await place.db.records.toArray()).map((row) => row.body?.name).sort();

async function write(place: Place, ...fields: string[]): Promise<void> {
  for (const name of fields) await writeBody(place, "field", { name });
}

test("what is written here is sent, numbered and known to be sent; another phone gets it", async () => {
  const [one, other, server] = [await newPlace(), await newPlace(), new PretendServer()];
  await write(one, "Hill", "Wood", "Brook");
  const context = contextOf(one, server);
  await syncLogbook(context);
  assert.deepEqual(await states(one), ["sent", "sent", "sent"]);
  assert.deepEqual({ ...context.tally }, { sent: 3, received: 0, held: 0, refused: 0, forks: 0 });
  assert.deepEqual(server.entries.map((entry) => entry.body), [{ name: "Hill" }, { name: "Wood" }, { name: "Brook" }]);
  await syncLogbook(contextOf(other, server));
  assert.deepEqual(await names(other), ["Brook", "Hill", "Wood"]);
  assert.equal((await other.db.records.toArray())[0]!.author_name, "Rika");
});

test("what goes over the wire is the entry alone: nothing that only this phone knows", async () => {
  const [place, server] = [await newPlace(), new PretendServer()];
  await write(place, "Hill");
  await syncLogbook(contextOf(place, server));
  const sent = server.pushes[0]!.entries[0]!;
  const expected = Object.keys(makeEntry("field", { name: "x" })).sort();
  assert.deepEqual(Object.keys(sent).sort(), expected);
});

test("a reply lost after the commit: sending again doubles nothing", async () => {
  const [place, server] = [await newPlace(), new PretendServer()];
  await write(place, "Hill", "Wood");
  server.fault = ({ method }) => (method === "POST" ? "lost" : null);
  assert.equal(await trouble(syncLogbook(contextOf(place, server))), "offline");
  assert.deepEqual(await states(place), ["here", "here"]);
  assert.equal(server.entries.length, 2);
  await write(place, "Brook");
  server.fault = () => null;
  await syncLogbook(contextOf(place, server));
  assert.equal(server.entries.length, 3);
  assert.deepEqual(await states(place), ["sent", "sent", "sent"]);
});

test("a captive portal, a foreign redirect, a proxy's page and silence all count as offline", async () => {
  const replies: (() => Response)[] = [
    () => page(), () => page(403), () => page(502), () => json([1]), () => json({ error: "no" }, 500),
    () => new Response("{", { headers: { "Content-Type": "application/json" } }),
    () => Object.defineProperty(json({}), "redirected", { value: true }),
  ];
  for (const reply of replies) {
    const [place, server] = [await newPlace(), new PretendServer()];
    await write(place, "Hill");
    server.fault = reply;
    assert.equal(await trouble(syncLogbook(contextOf(place, server))), "offline");
    assert.deepEqual(await states(place), ["here"]);
  }
});

test("a server that never answers is given up after the patience", async () => {
  const place = await newPlace();
  await write(place, "Hill");
  const context = contextOf(place, new PretendServer());
  const silent: typeof fetch = (_, init) => new Promise((__, refuse) => init!.signal!.addEventListener("abort", () => refuse(new Error("aborted"))));
  context.wire = makeWire(silent, 30);
  assert.equal(await trouble(syncLogbook(context)), "offline");
});

test("signed out or without access: sending stops and everything is kept", async () => {
  for (const [status, code, expected] of [[401, "signed_out", "signed_out"], [401, "other_account", "signed_out"], [403, "not_yours", "no_access"], [429, "too_many", "too_many"], [503, "database_busy", "server_trouble"]] as const) {
    const [place, server] = [await newPlace(), new PretendServer()];
    await write(place, "Hill", "Wood");
    server.fault = () => problem(status, code);
    assert.equal(await trouble(syncLogbook(contextOf(place, server))), expected);
    assert.deepEqual(await states(place), ["here", "here"]);
    assert.equal(server.requests.length, 1);
  }
});

test("a refused entry is kept with its reason; its neighbours are sent; mending sends it anew", async () => {
  const [place, server] = [await newPlace(), new PretendServer()];
  await write(place, "Hill", "bad", "Wood");
  server.refuses = (entry) => ((entry.body as { name: string } | null)?.name === "bad" ? { code: "bad_text", message: "half a character" } : null);
  const context = contextOf(place, server);
  await syncLogbook(context);
  assert.equal(context.tally.refused, 1);
  assert.deepEqual(await states(place), ["needs_you", "sent", "sent"]);
  const refused = (await place.db.entries.find("all_state", IDBKeyRange.only("needs_you")))[0]!;
  assert.equal(refused.refusal!.message, "half a character");
  await syncLogbook(contextOf(place, server));
  assert.equal(server.pushes.length, 1); // not sent again by itself
  await writeBody(place, "field", { name: "mended" }, refused.record_id);
  await syncLogbook(contextOf(place, server));
  assert.deepEqual(await names(place), ["Hill", "Wood", "mended"]);
  assert.deepEqual(await states(place), ["sent", "sent", "sent"]);
});

test("an entry on which the server itself fails waits alone, the others arrive in the same round", async () => {
  const [place, server] = [await newPlace(), new PretendServer()];
  for (let n = 0; n < 52; n++) await write(place, n === 17 ? "breaks" : n === 30 ? "bad" : `field ${n}`);
  server.fault = ({ body }) => (body?.entries.some((entry) => (entry.body as { name: string }).name === "breaks") ? problem(500, "server_mistake") : null);
  server.refuses = (entry) => ((entry.body as { name: string }).name === "bad" ? { code: "out_of_range", message: "no" } : null);
  const context = contextOf(place, server);
  await syncLogbook(context);
  assert.equal(context.tally.sent, 50);
  assert.equal(server.entries.length, 50);
  const waiting = await place.db.entries.find("all_state", IDBKeyRange.only("here"));
  assert.equal(waiting.length, 1);
  assert.equal(waiting[0]!.failures, 1);
  assert.ok(waiting[0]!.retry_at_ms! > Date.now());
  const asked = server.requests.length;
  await syncLogbook(contextOf(place, server));
  assert.equal(server.requests.length, asked + 1); // only the pull: it is not yet time to try again
  server.fault = () => null;
  await syncLogbook({ ...contextOf(place, server), now: () => Date.now() + 120_000 });
  assert.equal(server.entries.length, 51);
});

test("an entry the server cannot read yet is held, and sent once it can", async () => {
  const [place, server] = [await newPlace(), new PretendServer()];
  await write(place, "Hill");
  server.holds = () => true;
  await syncLogbook(contextOf(place, server));
  assert.deepEqual(await states(place), ["held"]);
  server.append((await place.db.entries.toArray())[0]!); // the server was upgraded and replays it
  await syncLogbook(contextOf(place, server));
  assert.deepEqual(await states(place), ["sent"]);
});

test("a server restored from a backup gets back what only the phones have, with its authors", async () => {
  const [rider, coach, server] = [await newPlace(), await newPlace(), new PretendServer()];
  await write(rider, "Hill", "Wood");
  await syncLogbook(contextOf(rider, server));
  server.author = { author: "99999999-9999-4999-8999-999999999999", author_name: "Idris" };
  await write(coach, "Quarry");
  await syncLogbook(contextOf(coach, server));
  await syncLogbook(contextOf(rider, server));
  server.restore(1);
  await write(rider, "Brook");
  await syncLogbook(contextOf(rider, server));
  assert.equal(server.entries.length, 4);
  assert.deepEqual(await names(rider), ["Brook", "Hill", "Quarry", "Wood"]);
  assert.equal(server.entries.find((entry) => (entry.body as { name: string }).name === "Quarry")!.author_name, "Idris");
  assert.ok(await countsAgree(rider.db, LOGBOOK));
  assert.equal((await readCursor(rider.db, LOGBOOK)).log_id, "log-1+");
  await syncLogbook(contextOf(coach, server));
  assert.deepEqual(await names(coach), ["Brook", "Hill", "Quarry", "Wood"]);
});

test("a server restored between a phone's first push and its first fetch loses nothing", async () => {
  const [place, server] = [await newPlace(), new PretendServer()];
  await write(place, "Hill", "Wood");
  const context = contextOf(place, server);
  const fetches = context.wire.get;
  context.wire.get = async () => ({ kind: "offline" });
  assert.equal(await trouble(syncLogbook(context)), "offline");
  assert.equal(server.entries.length, 2);
  server.restore(0);
  context.wire.get = fetches;
  await syncLogbook(context);
  assert.deepEqual(server.entries.map((entry) => entry.body), [{ name: "Hill" }, { name: "Wood" }]);
  assert.ok(await countsAgree(place.db, LOGBOOK));
});

test("a phone that misses an entry notices by counting and comes right by itself", async () => {
  const [place, server] = [await newPlace(), new PretendServer()];
  await write(place, "Hill", "Wood", "Brook");
  await syncLogbook(contextOf(place, server));
  const [first] = await place.db.entries.toArray();
  await place.db.entries.delete([LOGBOOK, first!.id]);
  assert.equal(await countsAgree(place.db, LOGBOOK), false);
  await syncLogbook(contextOf(place, server));
  assert.ok(await countsAgree(place.db, LOGBOOK));
  assert.equal(server.entries.length, 3);
});

test("an emptied phone fetches everything and sends nothing", async () => {
  const [place, fresh, server] = [await newPlace(), await newPlace(), new PretendServer()];
  await write(place, "Hill", "Wood");
  await syncLogbook(contextOf(place, server));
  await syncLogbook(contextOf(fresh, server));
  assert.deepEqual(await names(fresh), ["Hill", "Wood"]);
  assert.equal(server.pushes.length, 1);
});

test("twelve hundred entries go out in batches of at most 500, oldest first, and come in by pages", async () => {
  const [place, fresh, server] = [await newPlace(), await newPlace(), new PretendServer()];
  const entries = Array.from({ length: 1200 }, (_, n) => makeEntry("field", { name: `f${n}` }));
  await place.db.entries.bulkAdd(entries.map((entry) => ({ ...entry, number: null, logbook_id: LOGBOOK, state: "here" as const })));
  await syncLogbook(contextOf(place, server));
  assert.deepEqual(server.pushes.map((push) => push.entries.length), [500, 500, 200]);
  assert.deepEqual(server.entries.map((entry) => entry.id), entries.map((entry) => entry.id));
  assert.deepEqual(server.pushes.map((push) => "more" in push), [true, true, false]);
  await syncLogbook(contextOf(fresh, server));
  assert.equal(await fresh.db.records.count(), 1200);
});

test("a batch is at most 1 MiB", async () => {
  const [place, server] = [await newPlace(), new PretendServer()];
  const notes = "é".repeat(200_000); // 400 000 bytes each
  const entries = Array.from({ length: 6 }, (_, n) => makeEntry("field", { name: `f${n}`, notes }));
  await place.db.entries.bulkAdd(entries.map((entry) => ({ ...entry, number: null, logbook_id: LOGBOOK, state: "here" as const })));
  await syncLogbook(contextOf(place, server));
  assert.deepEqual(server.pushes.map((push) => push.entries.length), [2, 2, 2]);
});

test("a cut connection costs one page at most: the next sync goes on from there", async () => {
  const [place, fresh, server] = [await newPlace(), await newPlace(), new PretendServer()];
  const entries = Array.from({ length: 1200 }, (_, n) => makeEntry("field", { name: `f${n}` }));
  await place.db.entries.bulkAdd(entries.map((entry) => ({ ...entry, number: null, logbook_id: LOGBOOK, state: "here" as const })));
  await syncLogbook(contextOf(place, server));
  server.fault = ({ url }) => (url.includes("after=1000") ? "lost" : null);
  assert.equal(await trouble(syncLogbook(contextOf(fresh, server))), "offline");
  assert.equal((await readCursor(fresh.db, LOGBOOK)).number, 1000);
  server.fault = () => null;
  server.requests = [];
  await syncLogbook(contextOf(fresh, server));
  assert.deepEqual(server.requests.map((request) => request.match(/after=(\d+)/)?.[1]), ["1000"]);
});

test("two phones edit the same field of one record: a fork, seen by both, settled by one tap", async () => {
  const [one, other, server] = [await newPlace(), await newPlace(), new PretendServer()];
  await write(one, "Hill");
  await syncLogbook(contextOf(one, server));
  await syncLogbook(contextOf(other, server));
  const { record_id } = (await one.db.records.toArray())[0]!;
  await writeBody(one, "field", { name: "Hill field" }, record_id);
  await writeBody(other, "field", { name: "High field" }, record_id);
  await syncLogbook(contextOf(one, server));
  const context = contextOf(other, server);
  await syncLogbook(context);
  assert.equal(context.tally.forks, 1);
  const forked = (await other.db.records.get([LOGBOOK, record_id]))!;
  assert.deepEqual(forked.fork!.sides.map((side) => side.body!.name), ["Hill field", "High field"]);
  assert.equal(forked.body!.name, "High field"); // the higher number
  await writeBody(other, "field", { name: "Hill field" }, record_id);
  await syncLogbook(contextOf(other, server));
  await syncLogbook(contextOf(one, server));
  const settled = (await one.db.records.get([LOGBOOK, record_id]))!;
  assert.deepEqual([settled.body!.name, settled.fork, settled.forked], ["Hill field", null, undefined]);
});

test("something taken back here stays taken back everywhere", async () => {
  const [one, other, server] = [await newPlace(), await newPlace(), new PretendServer()];
  await write(one, "Hill");
  const { record_id } = (await one.db.records.toArray())[0]!;
  await syncLogbook(contextOf(one, server));
  await syncLogbook(contextOf(other, server));
  await writeTakeBack(one, record_id);
  await syncLogbook(contextOf(one, server));
  await syncLogbook(contextOf(other, server));
  assert.equal((await other.db.records.get([LOGBOOK, record_id]))!.shelf, "gone");
});

test("an entry of a kind this release does not know is kept as it came", async () => {
  const [place, server] = [await newPlace(), new PretendServer()];
  const strange = { ...makeEntry("field", { name: "x" }), kind: "saddle_fitting", body: { by: "someone" } };
  server.append(strange);
  await syncLogbook(contextOf(place, server));
  const row = (await place.db.records.toArray())[0]!;
  assert.deepEqual([row.shelf, row.kind, row.body], ["unread", "saddle_fitting", null]);
  assert.deepEqual((await place.db.entries.toArray())[0]!.body, { by: "someone" });
});

test("an id that another entry already has costs nothing: ours is sent under a new one", async () => {
  const [place, server] = [await newPlace(), new PretendServer()];
  await write(place, "Hill");
  const mine = (await place.db.entries.toArray())[0]!;
  server.append({ ...makeEntry("field", { name: "stranger" }), id: mine.id });
  await syncLogbook(contextOf(place, server));
  assert.deepEqual(await names(place), ["Hill", "stranger"]);
  assert.equal(server.entries.length, 2);
});

test("the wait grows from 4 s to at most 60 s and differs from phone to phone", () => {
  assert.deepEqual([0, 1, 2, 3, 4, 9].map((n) => backOff(n, () => 0)), [4000, 8000, 16_000, 32_000, 60_000, 60_000]);
  assert.equal(backOff(4, () => 1), 30_000);
});
