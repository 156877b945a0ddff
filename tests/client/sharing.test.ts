// A field handed on: what goes along, what is read back, and that bringing it again changes nothing twice.

import assert from "node:assert/strict";
import { test } from "node:test";

import { completeBody, type Fence } from "../../webclient/src/entries/bodies.ts";
import { takeIn } from "../../webclient/src/imports/takeIn.ts";
import { planField } from "../../webclient/src/sharing/bringField.ts";
import { readField, type SharedField, writeField } from "../../webclient/src/sharing/fieldFile.ts";
import { writeBody } from "../../webclient/src/store/write.ts";
import { LOGBOOK, newPlace } from "./storage.ts";

const FIELD = "11111111-1111-4111-8111-111111111111";
const FENCES = ["22222222-2222-4222-8222-222222222222", "33333333-3333-4333-8333-333333333333"];
const TRACK = "44444444-4444-4444-8444-444444444444";

function shared(changes: Partial<Fence> = {}, along = { positions: true, notes: true }, day = "2026-05-03T09:00:00.000Z"): SharedField {
  const fence = (record_id: string, label: string, more: Partial<Fence> = {}) => ({ record_id, body: completeBody("fence", { field_id: FIELD, label, profile: "log", latitude: 51.5, longitude: -2.25, position_accuracy_m: 6, favourite: true, notes: "slippery", ...more }) });
  return writeField(
    { record_id: FIELD, body: completeBody("field", { name: "Thornybank", notes: "ask at the farm" }) },
    [fence(FENCES[0]!, "1 Log", changes), fence(FENCES[1]!, "2 Brush")],
    [{ record_id: TRACK, body: completeBody("track", { field_id: FIELD, name: "Long side", distance_m: 400, measured_by: "wheel", calibration_id: TRACK }) }],
    along, day,
  );
}

async function bring(place: Awaited<ReturnType<typeof newPlace>>, field: SharedField) {
  const plan = await planField(place.db, LOGBOOK, field);
  await takeIn(place, plan.entries);
  return plan;
}

test("a file gives back what was written, and a calibration stays at home", () => {
  const made = shared();
  assert.deepEqual(readField(JSON.stringify(made)), made);
  assert.deepEqual(made.parts.map(({ kind }) => kind), ["field", "fence", "fence", "track"]);
  assert.equal(made.parts[3]!.body.calibration_id, null);
  assert.equal(made.parts[1]!.body.favourite, false);
});

test("places and notes go along only when that was said", () => {
  const bare = JSON.stringify(shared({}, { positions: false, notes: false }));
  for (const secret of ["51.5", "-2.25", "slippery", "ask at the farm"]) assert.ok(!bare.includes(secret), secret);
});

test("what is no field is told apart from half a field and one of a newer app", () => {
  assert.equal(readField("[]"), "not_field");
  assert.equal(readField("hello"), "not_field");
  assert.equal(readField(JSON.stringify(shared()).slice(0, 300)), "cut");
  assert.equal(readField(JSON.stringify({ ...shared(), fieldtally_field: 2 })), "newer");
  const newer = shared();
  newer.parts[1]!.kind_version = 99;
  assert.equal(readField(JSON.stringify(newer)), "newer");
});

test("brought twice it is there once", async () => {
  const place = await newPlace();
  const first = await bring(place, shared());
  assert.deepEqual([first.fresh, first.renewed, first.already, first.counts], [4, 0, 0, { fence: 2, track: 1 }]);
  const again = await bring(place, shared());
  assert.deepEqual([again.fresh, again.renewed, again.already, again.entries], [0, 0, 4, []]);
  assert.equal((await place.db.records.toArray()).length, 4);
});

test("what its owner changed comes along; what was changed here stays, and is named", async () => {
  const place = await newPlace();
  await bring(place, shared());
  const changed = await bring(place, shared({ height_cm: 95 }, undefined, "2026-06-01T09:00:00.000Z"));
  assert.deepEqual([changed.renewed, changed.already, changed.kept], [1, 3, []]);
  const row = (await place.db.records.toArray()).find(({ body }) => body!.label === "1 Log")!;
  assert.equal(row.body!.height_cm, 95);
  await writeBody(place, "fence", { ...row.body, height_cm: 80 } as never, row.record_id);
  const later = await bring(place, shared({ height_cm: 100 }, undefined, "2026-07-01T09:00:00.000Z"));
  assert.deepEqual([later.renewed, later.kept], [0, ["1 Log"]]);
  assert.equal((await place.db.records.get([LOGBOOK, row.record_id]))!.body!.height_cm, 80);
});
