// A whole interval set over a real (pretend-disk) IndexedDB: what is kept, when, and what a killed page, a
// second tab, a slip and a stopwatch in the same table find.

import assert from "node:assert/strict";
import { beforeEach, describe, it } from "node:test";
import type { SetPlan } from "../../webclient/src/conditioning/set.ts";
import { heldSet } from "../../webclient/src/screens/conditioning/keepSet.ts";
import { SetRunner } from "../../webclient/src/screens/conditioning/setRunner.ts";
import { heldRun, keepStart } from "../../webclient/src/screens/watch/keep.ts";
import { save } from "../../webclient/src/store/book.ts";
import { here, logbookId, openDb } from "../../webclient/src/store/place.ts";
import { findRecords } from "../../webclient/src/store/read.ts";
import { begin } from "../../webclient/src/pace/run.ts";
import { FakePhone, PLAN as CANTER } from "./fakePhone.ts";
import { freshStore, PhonePage } from "./phonePage.ts";

const PLAN: SetPlan = { outing_id: "018f0000-0000-7000-8000-000000000001", canters: 2, work_s: 180, walk_s: 120, walk_first_s: 0, speed_mpm: 350 };
const MIN = 60_000;

class Page extends PhonePage {
  runner = new SetRunner(this.device);
}

const sets = async () => (await findRecords(here(), "interval_set", {})).map((row) => row.body as { intervals: { work_s: number; rest_s: number; speed_mpm: number | null }[]; recoveries: unknown[] });
const works = async () => (await sets()).map(({ intervals }) => intervals.map(({ work_s, rest_s }) => [work_s, rest_s]));
/** Writes that nobody waits for have reached the disk. */
const quiet = () => new Promise((resolve) => setTimeout(resolve, 60));

/** Waits until `works` says this, for as long as a busy machine may take. */
async function saved(expected: number[][][]): Promise<void> {
  for (let tries = 0; tries < 100 && JSON.stringify(await works()) !== JSON.stringify(expected); tries++) await quiet();
  assert.deepEqual(await works(), expected);
}

beforeEach(async () => {
  await quiet(); // what the last test's page still had to write belongs to its own database
  await freshStore();
});

describe("an interval set", () => {
  it("is on the disk from its start, and an entry as soon as the last canter is over", async () => {
    const page = new Page(new FakePhone());
    await page.runner.start(PLAN, 0);
    assert.deepEqual([page.runner.keeping.value, (await heldSet(here()))?.plan, await works()], ["kept", PLAN, []]);
    page.ride(8 * MIN + 1000);
    await saved([[[180, 120], [180, 0]]]);
    assert.equal((await heldSet(here()))?.ended_ms, 8 * MIN, "the clock of the recovery goes on");
    assert.deepEqual((await sets())[0]?.intervals.map(({ speed_mpm }) => speed_mpm), [350, 350]);
  });

  it("sounds before and at each canter, at each walk, and when rates are due", async () => {
    const page = new Page(new FakePhone());
    await page.runner.start(PLAN, 0);
    page.ride(10 * MIN + 1000);
    const told = page.cues.map(({ kind, at_ms }) => [kind, at_ms / 1000]);
    assert.deepEqual(told, [["minute", 180], ["minute", 290], ["target", 300], ["minute", 480], ["target", 600]]);
  });

  it("is taken up by a page that was killed and opened again, without losing a second", async () => {
    const page = new Page(new FakePhone());
    await page.runner.start(PLAN, 0);
    page.ride(2 * MIN);
    await quiet();
    page.phone.newLife(2 * MIN);
    const next = new Page(page.phone);
    await next.runner.takeUp();
    assert.equal(Math.round(next.runner.elapsed()!.elapsed_ms / 1000), 240);
    assert.deepEqual(next.cues, [], "what fell due while nobody looked is old news");
    next.ride(60_000);
    assert.deepEqual(next.cues.map(({ kind }) => kind), ["minute", "target"]);
  });

  it("is saved when it is found after its end, and let go when its recovery is long over", async () => {
    const page = new Page(new FakePhone());
    await page.runner.start(PLAN, 0);
    await quiet();
    page.phone.newLife(5 * 60 * MIN);
    const next = new Page(page.phone);
    await next.runner.takeUp();
    await saved([[[180, 120], [180, 0]]]);
    assert.deepEqual([await heldSet(here()), next.runner.run.value], [null, null]);
  });

  it("is one record however often it is found, and rates added meanwhile stay", async () => {
    const page = new Page(new FakePhone());
    await page.runner.start(PLAN, 0);
    page.ride(8 * MIN + 1000);
    await saved([[[180, 120], [180, 0]]]);
    await quiet();
    const [row] = await findRecords(here(), "interval_set", {});
    await save("interval_set", { ...(row!.body as never as { outing_id: string; intervals: [] }), recoveries: [{ minute: 2, heart_rate_bpm: 96 }] }, row!.record_id);
    for (let life = 0; life < 3; life++) {
      page.phone.newLife(1000);
      const next = new Page(page.phone);
      await next.runner.takeUp();
      next.ride(2000);
      await quiet();
    }
    const after = await sets();
    assert.deepEqual([after.length, after[0]!.recoveries.length], [1, 1]);
  });

  it("undoes an end that was a slip: the entry is taken back and saved anew at the real end", async () => {
    const page = new Page(new FakePhone());
    await page.runner.start(PLAN, 0);
    page.ride(MIN);
    const before = await page.runner.end(0);
    assert.deepEqual(await works(), [[[60, 0]]]);
    await page.runner.undo(before!);
    assert.deepEqual(await works(), []);
    page.ride(7 * MIN + 1000);
    await saved([[[180, 120], [180, 0]]]);
  });

  it("ended before the first canter is no set", async () => {
    const page = new Page(new FakePhone());
    await page.runner.start({ ...PLAN, walk_first_s: 900 }, 0);
    page.ride(MIN);
    await page.runner.end(0);
    assert.deepEqual([await works(), await heldSet(here()), page.runner.run.value], [[], null, null]);
  });

  it("let go is gone, and comes back whole on undo", async () => {
    const page = new Page(new FakePhone());
    await page.runner.start(PLAN, 0);
    page.ride(MIN);
    const run = page.runner.run.value;
    const going = page.runner.letGo();
    assert.ok(page.runner.run.value, "it is shown until the disk has let go of it");
    await going;
    assert.deepEqual([await heldSet(here()), page.runner.elapsed()], [null, null]);
    page.phone.awake(5000);
    await page.runner.bringBack(run!);
    assert.equal(Math.round(page.runner.elapsed()!.elapsed_ms / 1000), 65);
  });

  it("is one at a time: a second start finds the first", async () => {
    const page = new Page(new FakePhone());
    await page.runner.start(PLAN, 0);
    const other = new Page(page.phone);
    page.ride(MIN);
    await other.runner.start({ ...PLAN, canters: 5 }, 0);
    assert.equal(other.runner.run.value?.id, page.runner.run.value?.id);
  });

  it("never writes over a tap made in another tab, and takes it up when looked at again", async () => {
    const phone = new FakePhone();
    const [one, other] = [new Page(phone), new Page(phone)];
    await one.runner.start(PLAN, 0);
    one.ride(MIN);
    await other.runner.takeUp();
    await other.runner.on(0);
    one.ride(6000);
    await quiet();
    assert.equal((await heldSet(here()))?.changes, 1);
    one.beat(true);
    await quiet();
    assert.equal(one.runner.run.value?.segments[0]!.length_ms, MIN);
  });

  it("says so when the disk refuses, and keeps the time all the same", async () => {
    const page = new Page(new FakePhone());
    await page.runner.start(PLAN, 0);
    const said = console.error;
    console.error = () => undefined;
    openDb.value!.close();
    page.ride(MIN);
    await page.runner.on(0);
    console.error = said;
    assert.deepEqual([page.runner.keeping.value, Math.round(page.runner.elapsed()!.elapsed_ms / 1000)], ["unsaved", 60]);
  });

  it("stays with its logbook", async () => {
    const page = new Page(new FakePhone());
    await page.runner.start(PLAN, 0);
    page.ride(MIN);
    await quiet();
    logbookId.value = "another";
    await page.runner.takeUp();
    assert.deepEqual([page.runner.run.value, await heldSet(here())], [null, null]);
    logbookId.value = "logbook";
    await page.runner.takeUp();
    assert.equal(Math.round(page.runner.elapsed()!.elapsed_ms / 1000), 60);
  });
});

describe("a set and a canter", () => {
  it("are kept side by side: neither is taken for the other", async () => {
    const page = new Page(new FakePhone());
    await page.runner.start(PLAN, 0);
    assert.equal(await heldRun(here()), null);
    const run = begin("018f0000-0000-7000-8000-000000000009", CANTER, page.phone.sample());
    await keepStart(here(), run);
    assert.equal((await heldRun(here()))?.id, run.id);
    assert.equal((await heldSet(here()))?.id, page.runner.run.value?.id);
  });
});
