// A logbook from before any account, moved under one: the same entries, none twice, whenever it is cut off.

import assert from "node:assert/strict";
import { test } from "node:test";

import { clearWhenSent, keepUnder, progress } from "../../webclient/src/account/keep.ts";
import { localBegun } from "../../webclient/src/account/local.ts";
import { LOCAL } from "../../webclient/src/account/session.ts";
import { makeEntry } from "../../webclient/src/entries/entry.ts";
import { takeIn } from "../../webclient/src/imports/takeIn.ts";
import { storeBytes } from "../../webclient/src/media/keep.ts";
import { openPhoneDb, type PhoneDb } from "../../webclient/src/store/db.ts";
import type { Place } from "../../webclient/src/store/place.ts";
import { writeBody, writeTakeBack } from "../../webclient/src/store/write.ts";
import { newPlace } from "./storage.ts";

const OWN = "33333333-3333-4333-8333-333333333333";

/** Two horses, one of them edited and one taken back, and an outing: five entries without an account. */
async function begun(): Promise<PhoneDb> {
  localBegun.value = true;
  const db = await openPhoneDb(LOCAL);
  await db.transaction(["entries", "records", "meta", "drafts"], async (inside) => {
    for (const table of [inside.entries, inside.records, inside.meta, inside.drafts]) await table.deleteRange(IDBKeyRange.lowerBound(""));
  });
  const place: Place = { db, logbook_id: OWN, me: { id: LOCAL, display_name: "Rider" } };
  const horse = await writeBody(place, "horse", { name: "Finch" });
  await writeBody(place, "horse", { name: "Goldfinch" }, horse.record_id);
  const other = await writeBody(place, "horse", { name: "Wren" });
  await writeTakeBack(place, other.record_id);
  await writeBody(place, "outing", { horse_id: horse.record_id, date: "2026-05-03", activity: "flatwork" });
  await db.drafts.put({ key: "note/1", text: "half typed", saved_at_ms: 1 });
  return db;
}

const ids = async (db: PhoneDb): Promise<string[]> => (await db.entries.toArray()).map(({ id }) => id).sort();

/** What the server's numbering does to every row that waits. */
async function numberAll({ db }: Place, but = 0): Promise<void> {
  const rows = (await db.entries.toArray()).slice(but);
  await db.entries.bulkPut(rows.map((row, at) => ({ ...row, number: at + 1, state: "sent" })));
}

test("the same entries arrive under the account, once, however often", async () => {
  const local = await begun();
  const account = await newPlace();
  const told: number[][] = [];
  await keepUnder(account, (...numbers) => told.push(numbers));
  await keepUnder(account, () => undefined);
  assert.deepEqual(await ids(account.db), await ids(local));
  assert.deepEqual(told, [[5, 5]]);
  const rows = await account.db.entries.toArray();
  assert.ok(rows.every((row) => row.state === "here" && row.number === null && row.author === account.me.id && row.logbook_id === account.logbook_id));
  const shelves = (await account.db.records.toArray()).map((row) => row.shelf).sort();
  assert.deepEqual(shelves, ["gone", "horse", "outing"]);
  assert.equal((await account.db.drafts.get("note/1"))?.text, "half typed");
  local.close();
});

test("what was cut off in the middle is finished by doing it again", async () => {
  const local = await begun();
  const account = await newPlace();
  await takeIn(account, (await local.entries.toArray()).slice(0, 2)); // killed after the first step
  await keepUnder(account, () => undefined);
  assert.deepEqual(await ids(account.db), await ids(local));
  assert.equal((await account.db.records.toArray()).find((row) => row.shelf === "horse")?.body?.name, "Goldfinch");
  local.close();
});

test("the copy goes only when every entry has its number, and what came later is not lost", async () => {
  const local = await begun();
  const account = await newPlace();
  assert.equal(await clearWhenSent(account.db), null); // nothing was moved yet
  await keepUnder(account, () => undefined);
  await numberAll(account, 1);
  assert.equal(await clearWhenSent(account.db), null);
  assert.deepEqual([(await progress(account.db))!.numbered, (await progress(account.db))!.total], [4, 5]);
  await numberAll(account);
  const late = makeEntry("horse", { name: "Late" }); // another tab still records without an account
  await takeIn({ db: local, logbook_id: OWN, me: account.me }, [late]);
  assert.equal(await clearWhenSent(account.db), null);
  await keepUnder(account, () => undefined);
  await numberAll(account);
  local.close();
  assert.equal(await clearWhenSent(account.db), 6);
  assert.equal(await progress(account.db), null);
});

/** A photo on the phone before any account; its record's id. */
async function photo(db: PhoneDb): Promise<string> {
  const place: Place = { db, logbook_id: OWN, me: { id: LOCAL, display_name: "Rider" } };
  const of = { media_type: "image/jpeg" as const, size_bytes: 3 };
  await storeBytes(db, { logbook_id: OWN, sha256: "a".repeat(64), state: "here", ...of }, new Uint8Array([1, 2, 3]).buffer);
  const body = { about_id: OWN, media_sha256: "a".repeat(64), width_px: 1, height_px: 1, ...of };
  return (await writeBody(place, "photo", body)).record_id;
}

test("a photo that has not reached the server keeps the copy too", async () => {
  const local = await begun();
  await photo(local);
  const account = await newPlace();
  await keepUnder(account, () => undefined);
  await numberAll(account);
  assert.equal(await clearWhenSent(account.db), null);
  await account.db.media.put({ ...(await account.db.media.toArray())[0]!, state: "sent" });
  local.close();
  assert.equal(await clearWhenSent(account.db), 6);
});

test("a photo taken back before it was sent is copied, and keeps nothing waiting", async () => {
  const local = await begun();
  const record_id = await photo(local);
  await writeTakeBack({ db: local, logbook_id: OWN, me: { id: LOCAL, display_name: "Rider" } }, record_id);
  const account = await newPlace();
  await keepUnder(account, () => undefined);
  await numberAll(account);
  local.close();
  assert.equal(await clearWhenSent(account.db), 7);
  assert.equal(await account.db.media_bytes.count(), 1);
});

test("it says whose and from when, and where the first try was headed", async () => {
  const local = await begun();
  const account = await newPlace();
  await keepUnder(account, () => undefined);
  const now = (await progress(account.db))!;
  assert.deepEqual([now.horses, now.days], [["Goldfinch"], ["2026-05-03"]]);
  assert.deepEqual(now.target, { account_id: account.me.id, logbook_id: account.logbook_id });
  local.close();
});
