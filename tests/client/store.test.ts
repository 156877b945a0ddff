// The phone's store: all or nothing, live lists, drafts, copies, loss noticed, and what trouble is called.

import assert from "node:assert/strict";
import { test } from "node:test";

import { LOGBOOK, newPlace } from "./storage.ts"; // first: the store looks for IndexedDB as it is loaded

import { piecesOfCopy } from "../../webclient/src/copies/copyOfAll.ts";
import type { Bodies } from "../../webclient/src/entries/bodies.ts";
import { makeEntry } from "../../webclient/src/entries/entry.ts";
import { uuid7 } from "../../webclient/src/entries/uuid7.ts";
import type { EntryRow } from "../../webclient/src/store/db.ts";
import { getMeta, setMeta } from "../../webclient/src/store/db.ts";
import { DraftWriter } from "../../webclient/src/store/drafts.ts";
import { keepAsking } from "../../webclient/src/store/live.ts";
import { lookForLoss, lostStore } from "../../webclient/src/store/lost.ts";
import { findAbout, findForked, findNewest, findRecord, findRecords, findSince, findTakenBack } from "../../webclient/src/store/read.ts";
import { NotSaved, troubleOf } from "../../webclient/src/store/trouble.ts";
import { unsentEntries } from "../../webclient/src/store/unsent.ts";
import { discardEntries, writeBody, writeEdit, writePutBack, writeTakeBack } from "../../webclient/src/store/write.ts";
import { countAll } from "../../webclient/src/sync/counts.ts";

const pause = (ms: number) => new Promise((resolve) => setTimeout(resolve, ms));
const ATTEMPT = { outcome: "clear" as const };
const row = (more: Partial<EntryRow>): EntryRow => ({ ...makeEntry("field", { name: "x" }), number: null, logbook_id: LOGBOOK, state: "here", ...more });

test("a save is one new entry and its record, both there when it resolves", async () => {
  const place = await newPlace();
  const saved = await writeBody(place, "field", { name: "Hill" });
  const [entry] = await place.db.entries.toArray();
  assert.deepEqual([entry!.state, entry!.number, entry!.author, entry!.body], ["here", null, place.me.id, { name: "Hill" }]);
  assert.deepEqual(saved.heads, [entry!.id]);
  assert.deepEqual((await findRecord(place, saved.record_id))!.body, { name: "Hill", notes: null }); // defaults filled in
});

test("an edit supersedes, a taking back keeps the history, and putting back gives the last body again", async () => {
  const place = await newPlace();
  const { record_id } = await writeBody(place, "field", { name: "Hill" });
  await writeBody(place, "field", { name: "Hill field" }, record_id);
  await writeTakeBack(place, record_id);
  assert.deepEqual(await findRecords(place, "field", {}), []);
  assert.deepEqual((await findTakenBack(place, 5)).map(({ last }) => last), [{ name: "Hill field" }]);
  await writePutBack(place, record_id);
  assert.deepEqual((await findRecords(place, "field", {})).map((found) => found.body!.name), ["Hill field"]);
  const entries = await place.db.entries.toArray();
  assert.deepEqual(entries.map((entry) => entry.supersedes.length), [0, 1, 1, 1]);
});

test("edits made on one screen before it was drawn anew keep each other", async () => {
  const place = await newPlace();
  const { record_id, body } = await writeBody(place, "outing", { horse_id: uuid7(), date: "2026-05-03", activity: "fitness" });
  const shown = { record_id, kind: "outing" as const, body: body as unknown as Bodies["outing"] };
  await Promise.all([
    writeEdit(place, shown, { notes: "Into the wind" }), // left by tapping the chip beside it
    writeEdit(place, shown, { going: "firm" }),
    writeEdit(place, shown, { closed: true, going: shown.body.going }), // said again, not changed
  ]);
  const { notes, going, closed } = (await findRecord(place, record_id))!.body as unknown as Bodies["outing"];
  assert.deepEqual([notes, going, closed], ["Into the wind", "firm", true]);
  assert.equal((await findRecord(place, record_id))!.heads.length, 1);
});

test("a form saved whole changes only what was changed in it, and what states one fact stays together", async () => {
  const place = await newPlace();
  const { record_id, body } = await writeBody(place, "fence", { label: "4", profile: "log", height_cm: 80 });
  const asOpened = { record_id, kind: "fence" as const, body: body as unknown as Bodies["fence"] };
  await writeEdit(place, asOpened, { notes: "Wet in front", latitude: 51.5, longitude: -1.2, position_accuracy_m: 5 }); // the coach's, in the meantime
  await writeEdit(place, asOpened, { ...asOpened.body, height_cm: 90, latitude: 51.6, longitude: -1.2 });
  const now = (await findRecord(place, record_id))!.body as unknown as Bodies["fence"];
  assert.deepEqual([now.notes, now.height_cm, now.latitude, now.longitude, now.position_accuracy_m], ["Wet in front", 90, 51.6, -1.2, null]);
  await writeEdit(place, asOpened, { label: "4a", notes: "Dry" });
  assert.equal(((await findRecord(place, record_id))!.body as unknown as Bodies["fence"]).notes, "Dry", "where both changed one thing the later has the last word");
});

test("a record taken back while it was being edited stays taken back", async () => {
  const place = await newPlace();
  const { record_id, body } = await writeBody(place, "field", { name: "Hill", notes: "Flat" });
  await writeTakeBack(place, record_id);
  const edited = await writeEdit(place, { record_id, kind: "field", body: body as unknown as Bodies["field"] }, { name: "Hill field" });
  assert.deepEqual([edited, (await findRecord(place, record_id))!.body, await place.db.entries.count()], [null, null, 2]);
});

test("if anything in a transaction fails, nothing of it is kept", async () => {
  const place = await newPlace();
  await writeBody(place, "field", { name: "Hill" });
  const failing = place.db.transaction(["entries", "records"], async (inside) => {
    await inside.entries.add(row({}));
    throw new Error("slip");
  });
  await assert.rejects(failing, /slip/);
  await assert.rejects(place.db.transaction(["entries"], async (inside) => {
    const same = row({});
    await inside.entries.add(same);
    await inside.entries.add(same);
  }), { name: "ConstraintError" });
  assert.equal(await place.db.entries.count(), 1);
});

test("records are found by what they belong to, oldest first, and only the living ones", async () => {
  const place = await newPlace();
  const make = (outing_id: string, fence_id: string) => writeBody(place, "attempt", { ...ATTEMPT, outing_id, fence_id });
  const first = await make("o1", "f1");
  await make("o1", "f2");
  await make("o2", "f1");
  const gone = await make("o1", "f1");
  await writeTakeBack(place, gone.record_id);
  assert.equal((await findRecords(place, "attempt", { outing_id: "o1" })).length, 2);
  assert.deepEqual((await findRecords(place, "attempt", { outing_id: "o1", fence_id: "f1" })).map((found) => found.record_id), [first.record_id]);
  assert.equal((await findRecords(place, "attempt", {})).length, 3);
  assert.deepEqual(await findRecords(place, "attempt", { outing_id: "o9" }), []);
});

test("outings come newest day first; notes come with what they are about", async () => {
  const place = await newPlace();
  const outing = (date: string) => writeBody(place, "outing", { horse_id: "h", date, activity: "event" });
  for (const date of ["2026-03-01", "2026-05-01", "2026-04-01"]) await outing(date);
  assert.deepEqual((await findNewest(place, "outing", 2)).map((found) => found.day), ["2026-05-01", "2026-04-01"]);
  assert.deepEqual((await findSince(place, "outing", "2026-04-01")).map((found) => found.day), ["2026-04-01", "2026-05-01"]);
  await writeBody(place, "note", { about_id: "o1", text: "wet" });
  assert.deepEqual((await findAbout(place, "o1")).map((found) => found.body!.text), ["wet"]);
  assert.deepEqual(await findForked(place), []);
});

test("logbooks in one store do not see each other", async () => {
  const place = await newPlace();
  const other = { ...place, logbook_id: "another" };
  await writeBody(place, "field", { name: "Hill" });
  await writeBody(other, "field", { name: "Wood" });
  assert.deepEqual((await findRecords(place, "field", {})).map((found) => found.body!.name), ["Hill"]);
  assert.deepEqual((await findRecords(other, "field", {})).map((found) => found.body!.name), ["Wood"]);
  assert.equal((await countAll(place.db)).waiting, 2);
});

test("the counts say what waits and since when, what is held and what needs somebody", async () => {
  const place = await newPlace();
  assert.deepEqual(await countAll(place.db), { waiting: 0, photos: 0, voices: false, held: 0, needs_you: 0, oldest_waiting: null });
  await place.db.entries.bulkAdd([
    row({ recorded_at: "2026-05-02T10:00:00.000Z", logbook_id: "another" }), row({ recorded_at: "2026-05-01T10:00:00.000Z" }),
    row({ state: "held" }), row({ state: "needs_you" }), row({ state: "sent", number: 1 }),
  ]);
  assert.deepEqual(await countAll(place.db), { waiting: 2, photos: 0, voices: false, held: 1, needs_you: 1, oldest_waiting: "2026-05-01T10:00:00.000Z" });
  assert.equal((await unsentEntries(place.db)).length, 4);
});

test("discarding a refused entry takes it and, when nothing else is left of it, its record", async () => {
  const place = await newPlace();
  const { record_id, heads } = await writeBody(place, "field", { name: "Hill" });
  await discardEntries(place, record_id, heads);
  assert.deepEqual([await place.db.entries.count(), await place.db.records.count()], [0, 0]);
});

test("a live list asks again after every change, never twice at once, and stops when told", async () => {
  const place = await newPlace();
  const told: number[] = [];
  let asking = 0;
  const stop = keepAsking(place.db, async () => {
    assert.equal(++asking, 1);
    const found = (await findRecords(place, "field", {})).length;
    asking -= 1;
    return found;
  }, (found) => told.push(found));
  await Promise.all(["a", "b", "c"].map((name) => writeBody(place, "field", { name })));
  await pause(60);
  assert.equal(told.at(-1), 3);
  const before = told.length;
  await setMeta(place.db, "anything", 1); // nobody's list
  await pause(30);
  assert.equal(told.length, before);
  stop();
  await writeBody(place, "field", { name: "d" });
  await pause(30);
  assert.equal(told.length, before);
});

test("a live list that could not be read is asked again, and not for ever", async (context) => {
  context.mock.timers.enable({ apis: ["setTimeout"] });
  context.mock.method(console, "error", () => undefined);
  const place = await newPlace();
  const told: string[] = [];
  let asked = 0;
  const stop = keepAsking(place.db, async () => {
    if (++asked !== 3) throw new Error("the connection is being opened");
    return "found";
  }, (found) => told.push(found));
  for (let seconds = 0; seconds < 20; seconds++) {
    await new Promise((done) => setImmediate(done));
    context.mock.timers.tick(1000);
  }
  assert.deepEqual([told, asked], [["found"], 3]);
  stop();
  const never = keepAsking(place.db, async () => void assert.fail(String(++asked)), () => undefined);
  for (let seconds = 0; seconds < 20; seconds++) {
    await new Promise((done) => setImmediate(done));
    context.mock.timers.tick(1000);
  }
  assert.equal(asked, 3 + 5);
  never();
});

test("typing is on the disk within a third of a second, and what was cleared is gone", async () => {
  const place = await newPlace();
  const writer = new DraftWriter(place.db, "note");
  const kept = async () => (await place.db.drafts.get("note"))?.text;
  for (const text of ["w", "we", "wet"]) writer.write(text);
  await pause(20);
  assert.equal(await kept(), "w");
  await pause(320);
  assert.equal(await kept(), "wet");
  writer.write(null);
  writer.flush();
  await pause(20);
  assert.equal(await kept(), undefined);
});

test("a copy holds every entry of every logbook and reads as JSON", async () => {
  const place = await newPlace();
  await writeBody(place, "field", { name: "Hill “north”\n2" });
  await place.db.entries.bulkAdd(Array.from({ length: 1200 }, () => row({ state: "sent" })));
  const books = [{ id: LOGBOOK, title: "Rika", role: "rider" as const, log_id: "l", last_number: 0 }, { id: "empty", title: "E", role: "coach" as const, log_id: "l", last_number: 0 }];
  const all = JSON.parse((await piecesOfCopy(place.db, books)).join(""));
  assert.deepEqual(all.logbooks.map((book: { entries: unknown[] }) => book.entries.length), [1201, 0]);
  const unsent = JSON.parse((await piecesOfCopy(place.db, books, ["here"])).join(""));
  assert.deepEqual(unsent.logbooks[0].entries.map((entry: EntryRow) => (entry.body as { name: string }).name), ["Hill “north”\n2"]);
});

test("a store that is empty although it was known is noticed; a new or a filled one is not", async () => {
  const [fresh, known, filled] = [await newPlace(), await newPlace(), await newPlace()];
  await lookForLoss(fresh.db, "account-1", false);
  assert.equal(lostStore.value, false);
  await lookForLoss(known.db, "account-1", false); // the browser remembers the account, its store is gone
  assert.equal(lostStore.value, true);
  await writeBody(filled, "field", { name: "Hill" });
  await lookForLoss(filled.db, "account-2", true);
  assert.equal(lostStore.value, false);
  assert.ok(await getMeta(filled.db, "made_at"));
});

test("storage trouble is told apart by what a person can do", () => {
  assert.equal(troubleOf(new DOMException("no", "QuotaExceededError")), "full");
  assert.equal(troubleOf(new NotSaved("full", new DOMException("no", "QuotaExceededError"))), "full");
  assert.equal(troubleOf(new DOMException("The database connection is closing.", "InvalidStateError")), "lost");
  assert.equal(troubleOf(new DOMException("Connection to Indexed Database server lost. Refresh the page to try again", "UnknownError")), "lost");
  assert.equal(troubleOf(new TypeError("x is undefined")), "other");
});

test("a connection that was lost is opened once more", async () => {
  const place = await newPlace();
  await writeBody(place, "field", { name: "Hill" });
  place.db.close();
  await assert.rejects(place.db.entries.count(), (error) => troubleOf(error) === "lost");
  await place.db.reopen();
  assert.equal(await place.db.entries.count(), 1);
});
