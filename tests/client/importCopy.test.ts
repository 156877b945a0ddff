// A copy taken in again: nothing twice, nothing of another logbook by mistake, nothing unknown lost.

import assert from "node:assert/strict";
import { test } from "node:test";

import { piecesOfCopy } from "../../webclient/src/copies/copyOfAll.ts";
import { planCopy } from "../../webclient/src/imports/planCopy.ts";
import { type CopiedBook, readCopy } from "../../webclient/src/imports/readCopy.ts";
import { takeIn } from "../../webclient/src/imports/takeIn.ts";
import { takeMedia } from "../../webclient/src/imports/takeMedia.ts";
import { uuid5 } from "../../webclient/src/imports/uuid5.ts";
import { digestOf, storeBytes } from "../../webclient/src/media/keep.ts";
import type { Place } from "../../webclient/src/store/place.ts";
import { notSaved } from "../../webclient/src/store/trouble.ts";
import { writeBody } from "../../webclient/src/store/write.ts";
import { LOGBOOK, newPlace } from "./storage.ts";

const OWN = { id: LOGBOOK, title: "Rika", role: "rider" as const };
const INFO = { ...OWN, log_id: "99999999-9999-4999-8999-999999999999", last_number: 0 };
const ELSEWHERE = "44444444-4444-4444-8444-444444444444";

async function filled(): Promise<Place> {
  const place = await newPlace();
  const horse = await writeBody(place, "horse", { name: "Finch" });
  await writeBody(place, "horse", { name: "Goldfinch" }, horse.record_id);
  const outing = await writeBody(place, "outing", { horse_id: horse.record_id, date: "2026-05-03", activity: "cross_country_school" });
  for (let n = 0; n < 3; n++) await writeBody(place, "attempt", { outing_id: outing.record_id, fence_id: horse.record_id, outcome: "clear" });
  return place;
}

async function copyOf(place: Place, log_id: string | null = INFO.log_id): Promise<CopiedBook> {
  await place.db.meta.put({ key: `cursor:${LOGBOOK}`, value: { log_id, number: 0 } });
  const read = readCopy((await piecesOfCopy(place.db, [INFO])).join(""));
  assert.ok(Array.isArray(read), String(read));
  return read[0]!;
}

const stored = async ({ db }: Place) => (await db.entries.toArray()).map(({ id, body }) => ({ id, body }));

test("onto an empty phone, twice: all of it, once", async () => {
  const from = await filled();
  const book = await copyOf(from);
  const to = await newPlace();
  const plan = await planCopy(to.db, book, [OWN], OWN);
  assert.deepEqual([plan.foreign, plan.fresh.length, plan.already, plan.from, plan.counts], [false, 6, 0, "2026-05-03", { horse: 1, outing: 1, attempt: 3, others: 0 }]);
  assert.equal(await takeIn(to, plan.fresh), 6);
  assert.equal(await takeIn(to, plan.fresh), 0);
  assert.deepEqual(await stored(to), await stored(from));
  const again = await planCopy(to.db, book, [OWN], OWN);
  assert.deepEqual([again.fresh.length, again.already], [0, 6]);
  assert.equal((await to.db.records.toArray()).find((row) => row.kind === "horse")!.body!.name, "Goldfinch");
});

test("killed in the middle: doing it again ends the same", async () => {
  const from = await filled();
  const to = await newPlace();
  const { fresh } = await planCopy(to.db, await copyOf(from), [OWN], OWN);
  await takeIn(to, fresh.slice(0, 4));
  await takeIn(to, fresh);
  assert.deepEqual(await stored(to), await stored(from));
});

test("another logbook's is offered as new records only, the same ones each time, and points at its own", async () => {
  const from = await filled();
  const book = { ...(await copyOf(from)), id: ELSEWHERE };
  const to = await newPlace();
  await writeBody(to, "horse", { name: "Other" });
  const plan = await planCopy(to.db, book, [OWN], OWN);
  assert.equal(plan.foreign, true);
  await takeIn(to, plan.fresh);
  assert.equal((await planCopy(to.db, book, [OWN], OWN)).fresh.length, 0);
  const theirs = new Set((await stored(from)).map(({ id }) => id));
  const rows = await to.db.records.toArray();
  assert.ok((await stored(to)).every(({ id }) => !theirs.has(id)));
  const horse = rows.find((row) => row.body?.name === "Goldfinch")!;
  const outing = rows.find((row) => row.kind === "outing")!;
  assert.equal(outing.horse_id, horse.record_id);
  assert.equal(rows.filter((row) => row.outing_id === outing.record_id).length, 3);
});

test("a logbook that never saw a server, or whose entries are here already, is nobody else's", async () => {
  const from = await filled();
  const to = await newPlace();
  const unsent = { ...(await copyOf(from, null)), id: ELSEWHERE };
  assert.equal((await planCopy(to.db, unsent, [OWN], OWN)).foreign, false);
  await takeIn(to, unsent.entries.slice(0, 1));
  const sent = { ...(await copyOf(from)), id: ELSEWHERE };
  assert.deepEqual([(await planCopy(to.db, sent, [OWN], OWN)).foreign, (await planCopy(to.db, sent, [OWN], OWN)).already], [false, 1]);
});

test("what a role may not write is left out unless a receipt proves who wrote it", async () => {
  const from = await filled();
  const book = await copyOf(from);
  const remark = { ...book.entries[0]!, id: ELSEWHERE, record_id: ELSEWHERE, kind: "remark", supersedes: [], body: { about_id: ELSEWHERE, text: "Well ridden" } };
  const to = await newPlace();
  const bare = await planCopy(to.db, { ...book, entries: [remark] }, [OWN], OWN);
  assert.deepEqual([bare.fresh.length, bare.not_mine], [0, 1]);
  const proved = await planCopy(to.db, { ...book, entries: [{ ...remark, receipt: "x", author: ELSEWHERE, author_name: "Idris" }] }, [OWN], OWN);
  await takeIn(to, proved.fresh);
  assert.equal((await to.db.entries.toArray())[0]!.author_name, "Idris");
});

test("newer kinds and keys stay untouched; what is here under the same id stays", async () => {
  const place = await filled();
  const book = await copyOf(place);
  const newer = { ...book.entries[0]!, id: ELSEWHERE, record_id: ELSEWHERE, kind: "hologram", kind_version: 9, body: { deep: [1] }, sealed: true };
  const other = { ...book.entries[0]!, body: { name: "Changed" } };
  const plan = await planCopy(place.db, { ...book, entries: [newer, other] }, [OWN], OWN);
  assert.deepEqual([plan.fresh.length, plan.already, plan.differ], [1, 0, 1]);
  await takeIn(place, plan.fresh);
  const row = (await place.db.entries.get([LOGBOOK, ELSEWHERE])) as unknown as Record<string, unknown>;
  assert.deepEqual([row.kind, row.body, row.sealed], ["hologram", { deep: [1] }, true]);
  assert.equal((await place.db.records.get([LOGBOOK, ELSEWHERE]))!.shelf, "unread");
});

test("the server's export is read, held entries too; a line that is no entry is counted and left out", () => {
  const entry = { id: ELSEWHERE, record_id: LOGBOOK, supersedes: [], kind: "note", kind_version: 1, body: { about_id: LOGBOOK, text: "x" }, recorded_at: "2026-05-03T09:12:33.120Z", utc_offset_min: 60, local_date: "2026-05-03", clock: null };
  const bent = { ...entry, id: "77777777-7777-4777-8777-777777777777", kind: "fence", body: { label: "1", profile: "log", elements: 5 } };
  const file = { fieldtally_export: 1, logbook: { id: LOGBOOK, title: "R", log_id: LOGBOOK }, entries: [entry, { ...entry, id: "x" }, null, bent], held: [{ ...entry, id: LOGBOOK, kind: "hologram" }] };
  const [book] = readCopy(JSON.stringify(file)) as CopiedBook[];
  assert.deepEqual([book!.entries.map(({ id }) => id), book!.broken], [[ELSEWHERE, LOGBOOK], 3]);
});

test("an entry that was exported by itself comes back", async () => {
  const place = await filled();
  const [row] = await place.db.entries.toArray();
  const [book] = readCopy(JSON.stringify(row, null, 2)) as CopiedBook[];
  const to = await newPlace();
  const plan = await planCopy(to.db, book!, [OWN], OWN);
  assert.deepEqual([plan.foreign, plan.fresh.map(({ id }) => id)], [false, [row!.id]]);
});

test("a phone without room says so; what was taken in before stays, and doing it again goes on", async () => {
  const from = await filled();
  const to = await newPlace();
  const { fresh } = await planCopy(to.db, await copyOf(from), [OWN], OWN);
  await takeIn(to, fresh.slice(0, 2));
  const full = { ...to, db: Object.assign(Object.create(to.db), { transaction: () => Promise.reject(new DOMException("no room", "QuotaExceededError")) }) };
  await assert.rejects(takeIn(full, fresh), { name: "NotSaved", trouble: "full" });
  assert.equal(notSaved.value, "full");
  assert.equal(await takeIn(to, fresh), fresh.length - 2);
  assert.equal(notSaved.value, null);
});

test("a file that is not ours, cut off or from a newer release is told apart", () => {
  assert.equal(readCopy("hello"), "not_ours");
  assert.equal(readCopy('{"runs": []}'), "not_ours");
  assert.equal(readCopy("null"), "not_ours");
  assert.equal(readCopy('{"fieldtally_phone_export":1,"logbooks":[{"fieldtally_exp'), "cut");
  assert.equal(readCopy(`{"fieldtally_export":2,"logbook":{"id":"${LOGBOOK}"},"entries":[]}`), "newer");
});

// the worked example of RFC 9562, appendix A.4, and Python's uuid.uuid5 for text beyond ASCII
test("ids from content are UUIDs of version 5", async () => {
  assert.equal(await uuid5("6ba7b810-9dad-11d1-80b4-00c04fd430c8", "www.example.com"), "2ed6657d-e927-568b-95e1-2665a8aea6a2");
  assert.equal(await uuid5("6ba7b810-9dad-11d1-80b4-00c04fd430c8", "Zoë 😀"), "f4cf2260-047b-5b04-b902-950aeb32e091");
});

test("photos and voice notes go along and come back, each once; a damaged one is not taken for the true one", async () => {
  const from = await filled();
  const bytes = new Uint8Array([...Array(70_000).keys()].map((n) => n % 251)).buffer;
  const sha256 = await digestOf(bytes);
  await storeBytes(from.db, { logbook_id: LOGBOOK, sha256, media_type: "image/jpeg", size_bytes: bytes.byteLength, state: "sent" }, bytes);
  const { media } = await copyOf(from);
  assert.equal(media.length, 1);
  const to = await newPlace();
  assert.deepEqual(await takeMedia(to, media), { added: 1, damaged: 0 });
  assert.deepEqual(await takeMedia(to, media), { added: 0, damaged: 0 });
  assert.equal((await to.db.media.get([LOGBOOK, sha256]))!.state, "here");
  assert.deepEqual(new Uint8Array((await to.db.media_bytes.get([LOGBOOK, sha256]))!.bytes), new Uint8Array(bytes));
  const [whole] = media;
  const bent = [{ ...whole!, sha256: "0".repeat(64) }, { ...whole!, sha256: "1".repeat(64), base64: "%%%" }];
  assert.deepEqual(await takeMedia(to, bent), { added: 0, damaged: 2 });
});
