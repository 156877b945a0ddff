// The whole stopwatch over a real (pretend-disk) IndexedDB: what is kept, when, and what a countdown, a changed clock
// and a killed page find.

import assert from "node:assert/strict";
import { beforeEach, describe, it } from "node:test";
import { save } from "../../webclient/src/store/book.ts";
import { here } from "../../webclient/src/store/place.ts";
import { findRecords } from "../../webclient/src/store/read.ts";
import { FakePhone, PLAN } from "./fakePhone.ts";
import { freshStore } from "./phonePage.ts";
import { WatchPage, canters, quiet, runs } from "./watchPage.ts";

beforeEach(freshStore);

describe("a canter", () => {
  it("is on the disk from its start, and saved at its stop before it says so", async () => {
    const page = new WatchPage(new FakePhone());
    const started = page.stopwatch.start(PLAN, 0);
    assert.deepEqual([page.phase, page.stopwatch.keeping.value], ["running", "writing"]);
    await started;
    assert.equal(page.stopwatch.keeping.value, "kept");
    assert.equal((await runs()).length, 1);
    page.ride(63_200);
    const stopping = page.stopwatch.stop(0);
    assert.deepEqual([page.phase, page.stopwatch.saved_id.value], ["stopped", null]);
    await stopping;
    assert.ok(page.stopwatch.saved_id.value);
    assert.deepEqual(await runs(), []);
    const [canter, ...others] = await canters();
    assert.deepEqual([canter?.elapsed_ms, canter?.clock, others.length], [63_200, "agree", 0]);
  });

  it("is one canter however often start and stop are tapped", async () => {
    const page = new WatchPage(new FakePhone());
    await Promise.all([page.stopwatch.start(PLAN, 0), page.stopwatch.start(PLAN, 0)]);
    page.ride(60_000);
    await Promise.all([page.stopwatch.stop(0), page.stopwatch.stop(0), page.stopwatch.saveAgain()]);
    assert.equal((await canters()).length, 1);
    assert.equal(page.beats.length, 0, "the heart still beats");
  });

  it("gives its cues once each, and none that a hidden page has slept through", async () => {
    const page = new WatchPage(new FakePhone());
    await page.stopwatch.start({ ...PLAN, target_speed_mpm: 400 }, 0);
    page.ride(59_900);
    assert.equal(page.cues.length, 0);
    page.ride(200);
    page.ride(5_000);
    assert.deepEqual(page.cues.map((cue) => cue.kind), ["minute", "target"]);
    page.phone.awake(70_000);
    page.beat();
    assert.equal(page.cues.length, 2);
  });
});

describe("a clock that is changed", () => {
  it("is on the disk at the next beat, so that a kill a moment later costs nothing", async () => {
    const phone = new FakePhone();
    const first = new WatchPage(phone);
    await first.stopwatch.start(PLAN, 0);
    first.ride(1_000);
    phone.changeWall(-60_000);
    first.ride(500);
    await quiet();
    phone.newLife(3_000);
    const second = new WatchPage(phone);
    await second.stopwatch.takeUp();
    assert.equal(second.stopwatch.elapsed()?.elapsed_ms, 4_500);
  });
});

describe("a countdown", () => {
  const COUNTED = { ...PLAN, start: "standing" as const, countdown_s: 5 };

  it("is on the disk from its tap, sounds to its zero, and goes on from there", async () => {
    const page = new WatchPage(new FakePhone());
    await page.stopwatch.start(COUNTED, 0);
    assert.deepEqual([page.phase, (await runs()).length, page.stopwatch.elapsed()?.elapsed_ms], ["running", 1, -5000]);
    page.ride(5_000);
    assert.deepEqual(page.cues.map(({ kind }) => kind), ["count", "count", "count", "count", "go"]);
    page.ride(30_000);
    await page.stopwatch.stop(0);
    const [canter] = await canters();
    assert.deepEqual([canter?.elapsed_ms, canter?.countdown_s], [30_000, 5]);
  });

  it("called off leaves nothing on the disk and nothing in the book", async () => {
    const page = new WatchPage(new FakePhone());
    await page.stopwatch.start(COUNTED, 0);
    page.ride(3_000);
    await page.stopwatch.stop(0);
    assert.deepEqual([page.phase, await runs(), await canters(), page.beats.length], ["ready", [], [], 0]);
    assert.equal(page.stopwatch.wakefulness.value, "off");
  });

  it("killed before its zero is found counting or begun, whichever is true by then", async () => {
    for (const [gone, elapsed] of [[1_000, -2_000], [10_000, 7_000]] as const) {
      const phone = new FakePhone();
      const first = new WatchPage(phone);
      await first.stopwatch.start(COUNTED, 0);
      first.ride(2_000);
      phone.newLife(gone);
      const second = new WatchPage(phone);
      await second.stopwatch.takeUp();
      assert.equal(second.stopwatch.elapsed()?.elapsed_ms, elapsed);
      await second.stopwatch.throwAway();
    }
  });
});

describe("a stop that was a slip", () => {
  it("takes the fences met so far with it when the run goes on", async () => {
    const page = new WatchPage(new FakePhone());
    await page.stopwatch.start(PLAN, 0);
    page.ride(20_000);
    const attempt = { outing_id: PLAN.outing_id, fence_id: "018f0000-0000-7000-8000-000000000009", outcome: "clear" as const };
    await save("attempt", { ...attempt, canter_id: page.stopwatch.run!.id, canter_offset_ms: 20_000 });
    await save("attempt", attempt);
    await page.stopwatch.stop(0);
    const slip = page.stopwatch.saved_id.value;
    await page.stopwatch.keepRunning();
    page.ride(30_000);
    await page.stopwatch.stop(0);
    const tied = (await findRecords(here(), "attempt", {})).map((row) => row.body as { canter_id: string | null; canter_offset_ms: number | null });
    assert.notEqual(page.stopwatch.saved_id.value, slip);
    assert.deepEqual(tied.map(({ canter_id, canter_offset_ms }) => [canter_id, canter_offset_ms]), [[page.stopwatch.saved_id.value, 20_000], [null, null]]);
    assert.equal((await canters()).length, 1);
  });
});

describe("a page that is killed", () => {
  it("comes back with the run going and the true time (fault ST-09)", async () => {
    const phone = new FakePhone();
    const first = new WatchPage(phone);
    await first.stopwatch.start(PLAN, 0);
    first.ride(3_000);
    phone.newLife(40_000);
    const second = new WatchPage(phone);
    await second.stopwatch.takeUp();
    assert.equal(second.phase, "running");
    assert.equal(second.stopwatch.elapsed()?.elapsed_ms, 43_000);
    second.ride(20_200);
    await second.stopwatch.stop(0);
    const [canter] = await canters();
    assert.deepEqual([canter?.elapsed_ms, canter?.clock, canter?.monotonic_ms, canter?.wall_ms], [63_200, "restored", null, 63_200]);
  });

  it("between stop and save loses nothing: the next life saves it, once", async () => {
    const phone = new FakePhone();
    const first = new WatchPage(phone);
    await first.stopwatch.start(PLAN, 0);
    first.ride(60_000);
    const run = first.stopwatch.run;
    assert.ok(run);
    // what the disk holds when the process dies right after the stop stamp was written
    await here().db.runs.put({ id: run.id, logbook_id: "logbook", run, stopped: true });
    for (const life of [1, 2]) {
      phone.newLife(10_000 * life);
      await new WatchPage(phone).stopwatch.takeUp();
    }
    assert.deepEqual((await canters()).map((canter) => canter.elapsed_ms), [60_000]);
    assert.deepEqual(await runs(), []);
  });

  it("after save but before the run was cleared finds no ghost running", async () => {
    const phone = new FakePhone();
    const first = new WatchPage(phone);
    await first.stopwatch.start(PLAN, 0);
    first.ride(60_000);
    const run = first.stopwatch.run;
    await first.stopwatch.stop(0);
    await here().db.runs.put({ id: run?.id as string, logbook_id: "logbook", run, stopped: false });
    phone.newLife(5_000);
    const second = new WatchPage(phone);
    await second.stopwatch.takeUp();
    assert.equal(second.phase, "ready");
    assert.deepEqual(await runs(), []);
  });

  it("with a changed wall clock before it died still gives the true time", async () => {
    const phone = new FakePhone();
    const first = new WatchPage(phone);
    await first.stopwatch.start(PLAN, 0);
    first.ride(10_000);
    phone.changeWall(-3_600_000);
    first.ride(10_000);
    first.beat(true);
    await quiet();
    phone.newLife(5_000);
    const second = new WatchPage(phone);
    await second.stopwatch.takeUp();
    second.ride(5_000);
    assert.equal(second.stopwatch.elapsed()?.elapsed_ms, 30_000);
  });
});
