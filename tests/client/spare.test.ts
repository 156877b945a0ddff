// The second copy of what only this phone has: put back when the database lost it, gone when the server answered.

import assert from "node:assert/strict";
import { beforeEach, test } from "node:test";

import { LOGBOOK, newPlace } from "./storage.ts"; // first: the store looks for IndexedDB as it is loaded

import { afterSave } from "../../webclient/src/store/afterSave.ts";
import type { RecordRow } from "../../webclient/src/store/db.ts";
import { removeStore } from "../../webclient/src/store/lost.ts";
import type { Place } from "../../webclient/src/store/place.ts";
import { findRecord } from "../../webclient/src/store/read.ts";
import { dropSpare, keepSpare, putBackLost } from "../../webclient/src/store/spare.ts";
import { writeBody, writeTakeBack } from "../../webclient/src/store/write.ts";
import { emptyTally } from "../../webclient/src/sync/context.ts";
import { syncLogbook } from "../../webclient/src/sync/engine.ts";
import { makeWire } from "../../webclient/src/sync/wire.ts";
import { FakeCaches } from "./fakeCaches.ts";
import { PretendServer } from "./pretendServer.ts";

let fake: FakeCaches;
beforeEach(() => {
  globalThis.caches = (fake = new FakeCaches()) as unknown as CacheStorage;
});

const copies = async ({ db }: Place): Promise<string[]> => (await (await fake.open(`${db.name}-unsent`)).keys()).map(({ url }) => url.split("/").at(-1)!);

async function save({ db }: Place, row: RecordRow): Promise<RecordRow> {
  await keepSpare(db, LOGBOOK, row.heads);
  return row;
}

// what a log cut short does: the rows are as if they had never been written
async function lose({ db }: Place, row: RecordRow): Promise<void> {
  await db.entries.bulkDelete(row.heads.map((id) => [LOGBOOK, id] as [string, string]));
  await db.records.bulkDelete([[LOGBOOK, row.record_id]]);
}

test("what the database lost is put back as it was, and can be sent", async () => {
  const place = await newPlace();
  const hill = await save(place, await writeBody(place, "field", { name: "Hill" }));
  const wood = await save(place, await writeBody(place, "field", { name: "Wood" }));
  const before = await place.db.entries.toArray();
  await lose(place, wood);
  assert.equal(await putBackLost(place.db), 1);
  assert.deepEqual(await place.db.entries.toArray(), before);
  assert.equal((await findRecord(place, wood.record_id))!.body!.name, "Wood");
  assert.equal((await findRecord(place, hill.record_id))!.state, "here");
  assert.equal(await putBackLost(place.db), 0);
});

test("a copy that cannot be read keeps no other away", async () => {
  const place = await newPlace();
  const hill = await save(place, await writeBody(place, "field", { name: "Hill" }));
  const wood = await save(place, await writeBody(place, "field", { name: "Wood" }));
  await (await fake.open(`${place.db.name}-unsent`)).put(`/unsent/${LOGBOOK}/${hill.heads[0]}`, new Response("{ half a"));
  await lose(place, hill);
  await lose(place, wood);
  assert.equal(await putBackLost(place.db), 1);
  assert.equal((await findRecord(place, wood.record_id))!.body!.name, "Wood");
});

test("of a record that was changed and taken back only what was lost is put back", async () => {
  const place = await newPlace();
  const made = await save(place, await writeBody(place, "field", { name: "Hill" }));
  const renamed = await save(place, await writeBody(place, "field", { name: "Long Hill" }, made.record_id));
  const gone = await save(place, await writeTakeBack(place, made.record_id));
  await lose(place, gone);
  await lose(place, renamed);
  assert.equal(await putBackLost(place.db), 2);
  assert.equal((await findRecord(place, made.record_id))!.shelf, "gone");
});

test("every save makes its copy, and the server's answer ends it", async () => {
  const [place, server] = [await newPlace(), new PretendServer()];
  const row = await writeBody(place, "field", { name: "Hill" });
  afterSave(place, row);
  for (let turns = 0; turns < 50 && !(await copies(place)).length; turns++) await new Promise((done) => setTimeout(done, 10));
  assert.deepEqual(await copies(place), row.heads);
  const context = { db: place.db, wire: makeWire(server.fetch, 2000), logbook_id: LOGBOOK, device: "33333333-3333-4333-8333-333333333333", app: "0.1.0", tally: emptyTally(), progress: () => {}, now: Date.now };
  await syncLogbook(context);
  assert.deepEqual(await copies(place), []);
  assert.equal(await putBackLost(place.db), 0);
});

test("a copy that came after the answer goes at the next start and puts nothing back", async () => {
  const place = await newPlace();
  const row = await save(place, await writeBody(place, "field", { name: "Hill" }));
  const [entry] = await place.db.entries.toArray();
  await place.db.entries.bulkPut([{ ...entry!, state: "sent", number: 7 }]);
  assert.equal(await putBackLost(place.db), 0);
  assert.deepEqual(await copies(place), []);
  await keepSpare(place.db, LOGBOOK, row.heads);
  assert.deepEqual(await copies(place), []); // it is sent: nobody else's loss is ours alone
});

test("copies go with the store, and a browser without a cache does without", async () => {
  const place = await newPlace();
  const row = await save(place, await writeBody(place, "field", { name: "Hill" }));
  assert.deepEqual(await copies(place), row.heads);
  place.db.close();
  await removeStore(place.db.name.replace("fieldtally-", ""));
  assert.equal(fake.stores.size, 0);
  delete (globalThis as { caches?: unknown }).caches;
  const other = await newPlace();
  await save(other, await writeBody(other, "field", { name: "Wood" }));
  await dropSpare(other.db, LOGBOOK, ["any"]);
  assert.equal(await putBackLost(other.db), 0);
});
