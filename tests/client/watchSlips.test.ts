// The whole stopwatch over a real (pretend-disk) IndexedDB: what a second tab, a slip of the finger and a disk that
// refuses find.

import assert from "node:assert/strict";
import { beforeEach, describe, it } from "node:test";
import type { Run } from "../../webclient/src/pace/run.ts";
import { Table } from "../../webclient/src/store/table.ts";
import { FakePhone, PLAN } from "./fakePhone.ts";
import { freshStore } from "./phonePage.ts";
import { WatchPage, canters, quiet, runs } from "./watchPage.ts";

beforeEach(freshStore);

describe("two tabs", () => {
  it("starting both time one run, the first", async () => {
    const phone = new FakePhone();
    const [one, other] = [new WatchPage(phone), new WatchPage(phone)];
    await one.stopwatch.start(PLAN, 0);
    phone.awake(2_000);
    await other.stopwatch.start({ ...PLAN, distance_m: 999 }, 0);
    assert.equal(other.stopwatch.run?.id, one.stopwatch.run?.id);
    assert.equal(other.stopwatch.elapsed()?.elapsed_ms, 2_000);
    assert.equal((await runs()).length, 1);
  });

  it("the hidden one never writes over what the shown one has seen", async () => {
    const phone = new FakePhone();
    const [hidden, shown] = [new WatchPage(phone), new WatchPage(phone)];
    await hidden.stopwatch.start(PLAN, 0);
    hidden.tab = { visible: false };
    shown.tab = { page_id: "another tab" };
    await shown.stopwatch.takeUp();
    phone.awake(6_000);
    hidden.beat(true);
    await quiet();
    const [row] = (await runs()) as unknown as { run: Run }[];
    assert.equal(row?.run.trace.last.page_id, "another tab");
  });

  it("a run stopped in the other tab is not brought back by this one", async () => {
    const phone = new FakePhone();
    const [one, other] = [new WatchPage(phone), new WatchPage(phone)];
    await one.stopwatch.start(PLAN, 0);
    await other.stopwatch.takeUp();
    other.ride(60_000);
    await other.stopwatch.stop(0);
    one.beat(true);
    await quiet();
    assert.equal(one.phase, "ready");
    assert.deepEqual([(await runs()).length, (await canters()).length], [0, 1]);
  });
});

describe("slips", () => {
  it("a stop at once is asked about, and going on keeps the start", async () => {
    const page = new WatchPage(new FakePhone());
    await page.stopwatch.start(PLAN, 0);
    page.phone.awake(400);
    await page.stopwatch.stop(0);
    assert.equal(page.phase, "short");
    assert.deepEqual(await canters(), []);
    page.phone.awake(600);
    await page.stopwatch.keepRunning();
    page.ride(59_000);
    await page.stopwatch.stop(0);
    assert.deepEqual((await canters()).map((canter) => canter.elapsed_ms), [60_000]);
  });

  it("an early stop that was saved is taken back when the run goes on, and saved anew", async () => {
    const page = new WatchPage(new FakePhone());
    await page.stopwatch.start(PLAN, 0);
    page.ride(20_000);
    await page.stopwatch.stop(0);
    page.phone.awake(3_000);
    await page.stopwatch.keepRunning();
    assert.deepEqual(await canters(), []);
    page.phone.newLife(7_000); // and the page dies on top of it
    const next = new WatchPage(page.phone);
    await next.stopwatch.takeUp();
    assert.equal(next.phase, "running");
    next.ride(30_000);
    await next.stopwatch.stop(0);
    assert.deepEqual((await canters()).map((canter) => canter.elapsed_ms), [60_000]);
  });

  it("a run thrown away comes back by undo, the clock having been kept", async () => {
    const page = new WatchPage(new FakePhone());
    await page.stopwatch.start(PLAN, 0);
    page.ride(20_000);
    const going = page.stopwatch.throwAway();
    assert.equal(page.phase, "running", "it is shown until the disk has let go of it");
    const run = await going;
    assert.deepEqual([page.phase, await runs()], ["ready", []]);
    page.phone.awake(4_000);
    assert.ok(run);
    await page.stopwatch.bringBack(run);
    assert.equal(page.stopwatch.elapsed()?.elapsed_ms, 24_000);
    assert.equal((await runs()).length, 1);
  });

  it("a time no canter can have is kept for a question, not saved and not lost", async () => {
    const phone = new FakePhone();
    const first = new WatchPage(phone);
    await first.stopwatch.start(PLAN, 0);
    first.ride(1_000);
    phone.newLife(9_000_000);
    const second = new WatchPage(phone);
    await second.stopwatch.takeUp();
    await second.stopwatch.stop(0);
    assert.deepEqual([second.phase, second.stopwatch.saved_id.value, await canters()], ["stopped", null, []]);
    assert.equal((await runs()).length, 1);
  });
});

describe("a disk that refuses (fault ST-05)", () => {
  it("is told at the start, and the run goes on", async (test) => {
    const page = new WatchPage(new FakePhone());
    test.mock.method(console, "error", () => undefined);
    const put = test.mock.method(Table.prototype, "put", () => Promise.reject(new DOMException("full", "QuotaExceededError")));
    await page.stopwatch.start(PLAN, 0);
    assert.deepEqual([page.phase, page.stopwatch.keeping.value], ["running", "unsaved"]);
    put.mock.restore();
    page.ride(60_000);
    await page.stopwatch.stop(0);
    assert.deepEqual((await canters()).map((canter) => canter.elapsed_ms), [60_000]);
  });

  it("is told at the stop, keeps the time on the screen and saves at the next try", async (test) => {
    const page = new WatchPage(new FakePhone());
    await page.stopwatch.start(PLAN, 0);
    page.ride(60_000);
    test.mock.method(console, "error", () => undefined);
    const add = test.mock.method(Table.prototype, "add", () => Promise.reject(new DOMException("full", "QuotaExceededError")));
    await page.stopwatch.stop(0);
    assert.deepEqual([page.phase, page.stopwatch.keeping.value, page.stopwatch.saved_id.value], ["stopped", "unsaved", null]);
    add.mock.restore();
    page.phone.newLife(30_000); // even if the page dies before that, the stop stands
    const next = new WatchPage(page.phone);
    await next.stopwatch.takeUp();
    assert.deepEqual((await canters()).map((canter) => canter.elapsed_ms), [60_000]);
    await page.stopwatch.saveAgain();
    assert.deepEqual((await canters()).map((canter) => canter.elapsed_ms), [60_000]);
  });
});
