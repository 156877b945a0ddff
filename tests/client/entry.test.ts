// Making an entry: ids that sort by time (RFC 9562 section 5.7) and the stamps of the moment.

import assert from "node:assert/strict";
import { test } from "node:test";

import { civilDate, makeEntry } from "../../webclient/src/entries/entry.ts";
import { uuid7 } from "../../webclient/src/entries/uuid7.ts";

test("an id has the version and variant of RFC 9562 and carries its millisecond", () => {
  const at = Date.parse("2099-02-22T19:22:22.000Z");
  const id = uuid7(at);
  assert.match(id, /^[0-9a-f]{8}-[0-9a-f]{4}-7[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/);
  assert.equal(parseInt(id.replaceAll("-", "").slice(0, 12), 16), at);
});

test("ten thousand ids of one millisecond are distinct and in order, also when the clock is put back", () => {
  const at = Date.parse("2100-01-01T00:00:00.000Z");
  const ids = Array.from({ length: 10_000 }, (_, n) => uuid7(n % 2 ? at : at - 3_600_000));
  assert.deepEqual([...ids].sort(), ids);
  assert.equal(new Set(ids).size, ids.length);
});

test("an entry carries both clocks, the offset and the civil day of the phone", () => {
  const before = Date.now();
  const entry = makeEntry("field", { name: "Hill" });
  assert.ok(entry.clock!.wall_ms >= before && entry.clock!.wall_ms <= Date.now());
  assert.ok(entry.clock!.monotonic_ms >= 0);
  assert.equal(entry.recorded_at, new Date(entry.clock!.wall_ms).toISOString());
  assert.equal(entry.utc_offset_min, 0 - new Date().getTimezoneOffset()); // never -0, which JSON does not know
  assert.equal(entry.local_date, civilDate(new Date(entry.clock!.wall_ms)));
  assert.deepEqual(entry.supersedes, []);
});

test("an edit names its record and what it supersedes", () => {
  const first = makeEntry("field", { name: "Hill" });
  const edit = makeEntry("field", { name: "Hill field" }, { record_id: first.record_id, supersedes: [first.id] });
  assert.equal(edit.record_id, first.record_id);
  assert.deepEqual(edit.supersedes, [first.id]);
  assert.notEqual(edit.id, first.id);
});
