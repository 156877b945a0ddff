// An app that was updated reads what its older self kept: records of kinds that grew, and entries nobody could read.

import assert from "node:assert/strict";
import { test } from "node:test";

import { LOGBOOK, newPlace } from "./storage.ts"; // first: the store looks for IndexedDB as it is loaded

import type { Plain } from "../../webclient/src/entries/merge.ts";
import { catchUp } from "../../webclient/src/store/catchUp.ts";
import { getMeta, setMeta } from "../../webclient/src/store/db.ts";
import type { Place } from "../../webclient/src/store/place.ts";
import { findRecord } from "../../webclient/src/store/read.ts";
import { writeBody } from "../../webclient/src/store/write.ts";

const TRACK = { name: "Top hedge", distance_m: 400, measured_by: "wheel" as const };

/** The record as a release kept it that knew fewer fields. */
async function asBefore(place: Place, record_id: string, ...unknown: string[]): Promise<void> {
  const row = (await findRecord(place, record_id))!;
  const body = Object.fromEntries(Object.entries(row.body as Plain).filter(([name]) => !unknown.includes(name)));
  await place.db.records.bulkPut([{ ...row, body }]);
}

const bodyOf = async (place: Place, record_id: string) => (await findRecord(place, record_id))!.body as Plain;

test("records of a kind that grew are folded anew, the others left as they are", async () => {
  const place = await newPlace();
  const track = await writeBody(place, "track", TRACK);
  const field = await writeBody(place, "field", { name: "Hill" });
  await asBefore(place, track.record_id, "flags_m", "reading_m", "calibration_id");
  await asBefore(place, field.record_id, "notes");
  await catchUp(place.db);
  assert.deepEqual((await bodyOf(place, track.record_id)).flags_m, []);
  assert.deepEqual(await bodyOf(place, field.record_id), { name: "Hill" });
});

test("it is done once for each release", async () => {
  const place = await newPlace();
  const { record_id } = await writeBody(place, "track", TRACK);
  await catchUp(place.db);
  await asBefore(place, record_id, "flags_m");
  await catchUp(place.db);
  assert.equal("flags_m" in (await bodyOf(place, record_id)), false);
  await setMeta(place.db, "kinds_known", { ...(await getMeta<object>(place.db, "kinds_known")), track: 1 });
  await catchUp(place.db);
  assert.deepEqual((await bodyOf(place, record_id)).flags_m, []);
});

test("what an older app could not read is read now", async () => {
  const place = await newPlace();
  const made = await writeBody(place, "calibration", { instrument: "Yard wheel", measured_by: "wheel", taped_distance_m: 50, walked_m: [50, 51, 50], date: "2026-05-03" });
  await place.db.records.bulkPut([{ ...(await findRecord(place, made.record_id))!, shelf: "unread", body: null }]);
  await catchUp(place.db);
  const row = (await findRecord(place, made.record_id))!;
  assert.deepEqual([row.shelf, (row.body as Plain).reading_step_m, row.logbook_id], ["calibration", 0.1, LOGBOOK]);
});

test("more than one transaction holds are all read", async () => {
  const place = await newPlace();
  const made = [];
  for (let n = 0; n < 3; n++) made.push(await writeBody(place, "track", TRACK));
  const rows = await place.db.records.toArray();
  const { flags_m: _, ...old } = rows[0]!.body as Plain;
  const [entry] = await place.db.entries.toArray();
  const many = Array.from({ length: 1200 }, (_each, n) => `018f0000-0000-7000-8000-${String(n).padStart(12, "0")}`);
  await place.db.entries.bulkPut(many.map((id) => ({ ...entry!, id, record_id: id })));
  await place.db.records.bulkPut(many.map((record_id) => ({ ...rows[0]!, record_id, heads: [record_id], body: old })));
  await catchUp(place.db);
  const after = await place.db.records.toArray();
  assert.equal(after.length, 1203);
  assert.ok(after.every((row) => Array.isArray((row.body as Plain).flags_m)));
});
