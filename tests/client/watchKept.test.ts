// The whole stopwatch over a real (pretend-disk) IndexedDB: what is kept, when, and what a killed page, a
// second tab and a double tap find.

// packages are the client's: from here they are reached by path
import "../../webclient/node_modules/fake-indexeddb/auto/index.mjs";

import assert from "node:assert/strict";
import { beforeEach, describe, it } from "node:test";
import type { Cue } from "../../webclient/src/pace/cues.ts";
import type { Run } from "../../webclient/src/pace/run.ts";
import type { Sample } from "../../webclient/src/pace/trace.ts";
import type { Device } from "../../webclient/src/screens/watch/device.ts";
import { Stopwatch } from "../../webclient/src/screens/watch/stopwatch.ts";
import { save } from "../../webclient/src/store/book.ts";
import { openPhoneDb } from "../../webclient/src/store/db.ts";
import { Table } from "../../webclient/src/store/table.ts";
import { here, logbookId, me, openDb } from "../../webclient/src/store/place.ts";
import { findRecords } from "../../webclient/src/store/read.ts";
import { FakePhone, PLAN } from "./fakePhone.ts";

/** A page on the fake phone: its stopwatch, and its heart beaten by hand. */
class Page {
  phone: FakePhone;
  /** A tab of its own on the same phone: its own life, seen or not. */
  tab: Partial<Sample> = {};
  cues: Cue[] = [];
  beats: ((sample: Sample, parting: boolean) => void)[] = [];
  stopwatch: Stopwatch;

  constructor(phone: FakePhone) {
    this.phone = phone;
    const device: Device = {
      now: () => this.sample(),
      at: () => this.sample(),
      beat: (onBeat) => {
        this.beats.push(onBeat);
        return () => void this.beats.splice(this.beats.indexOf(onBeat), 1);
      },
      keepAwake: (onChange) => {
        onChange("held");
        return { release: () => onChange("off") };
      },
      touched: () => undefined,
      signal: (cue) => void this.cues.push(cue),
    };
    this.stopwatch = new Stopwatch(device);
  }

  sample(): Sample {
    return { ...this.phone.sample(), ...this.tab };
  }

  beat(parting = false): void {
    for (const onBeat of this.beats) onBeat(this.sample(), parting);
  }

  canter(ms: number): void {
    for (let left = ms; left > 0; left -= 500) {
      this.phone.awake(Math.min(500, left));
      this.beat();
    }
  }

  get phase(): string {
    return this.stopwatch.watch.value.phase;
  }
}

const canters = async () => (await findRecords(here(), "timed_canter", {})).map((row) => row.body as Record<string, unknown>);
const runs = async () => here().db.runs.toArray();
/** Writes that nobody waits for have reached the disk. */
const quiet = () => new Promise((resolve) => setTimeout(resolve, 30));

let account = 0;
beforeEach(async () => {
  openDb.value?.close();
  account += 1;
  openDb.value = await openPhoneDb(`account-${account}`);
  logbookId.value = "logbook";
  me.value = { id: "account", display_name: "Wren Ashdown" };
});

describe("a canter", () => {
  it("is on the disk from its start, and saved at its stop before it says so", async () => {
    const page = new Page(new FakePhone());
    const started = page.stopwatch.start(PLAN, 0);
    assert.deepEqual([page.phase, page.stopwatch.keeping.value], ["running", "writing"]);
    await started;
    assert.equal(page.stopwatch.keeping.value, "kept");
    assert.equal((await runs()).length, 1);
    page.canter(63_200);
    const stopping = page.stopwatch.stop(0);
    assert.deepEqual([page.phase, page.stopwatch.saved_id.value], ["stopped", null]);
    await stopping;
    assert.ok(page.stopwatch.saved_id.value);
    assert.deepEqual(await runs(), []);
    const [canter, ...others] = await canters();
    assert.deepEqual([canter?.elapsed_ms, canter?.clock, others.length], [63_200, "agree", 0]);
  });

  it("is one canter however often start and stop are tapped", async () => {
    const page = new Page(new FakePhone());
    await Promise.all([page.stopwatch.start(PLAN, 0), page.stopwatch.start(PLAN, 0)]);
    page.canter(60_000);
    await Promise.all([page.stopwatch.stop(0), page.stopwatch.stop(0), page.stopwatch.saveAgain()]);
    assert.equal((await canters()).length, 1);
    assert.equal(page.beats.length, 0, "the heart still beats");
  });

  it("gives its cues once each, and none that a hidden page has slept through", async () => {
    const page = new Page(new FakePhone());
    await page.stopwatch.start({ ...PLAN, target_speed_mpm: 400 }, 0);
    page.canter(59_900);
    assert.equal(page.cues.length, 0);
    page.canter(200);
    page.canter(5_000);
    assert.deepEqual(page.cues.map((cue) => cue.kind), ["minute", "target"]);
    page.phone.awake(70_000);
    page.beat();
    assert.equal(page.cues.length, 2);
  });
});

describe("a clock that is changed", () => {
  it("is on the disk at the next beat, so that a kill a moment later costs nothing", async () => {
    const phone = new FakePhone();
    const first = new Page(phone);
    await first.stopwatch.start(PLAN, 0);
    first.canter(1_000);
    phone.changeWall(-60_000);
    first.canter(500);
    await quiet();
    phone.newLife(3_000);
    const second = new Page(phone);
    await second.stopwatch.takeUp();
    assert.equal(second.stopwatch.elapsed()?.elapsed_ms, 4_500);
  });
});

describe("a countdown", () => {
  const COUNTED = { ...PLAN, start: "standing" as const, countdown_s: 5 };

  it("is on the disk from its tap, sounds to its zero, and goes on from there", async () => {
    const page = new Page(new FakePhone());
    await page.stopwatch.start(COUNTED, 0);
    assert.deepEqual([page.phase, (await runs()).length, page.stopwatch.elapsed()?.elapsed_ms], ["running", 1, -5000]);
    page.canter(5_000);
    assert.deepEqual(page.cues.map(({ kind }) => kind), ["count", "count", "count", "count", "go"]);
    page.canter(30_000);
    await page.stopwatch.stop(0);
    const [canter] = await canters();
    assert.deepEqual([canter?.elapsed_ms, canter?.countdown_s], [30_000, 5]);
  });

  it("called off leaves nothing on the disk and nothing in the book", async () => {
    const page = new Page(new FakePhone());
    await page.stopwatch.start(COUNTED, 0);
    page.canter(3_000);
    await page.stopwatch.stop(0);
    assert.deepEqual([page.phase, await runs(), await canters(), page.beats.length], ["ready", [], [], 0]);
    assert.equal(page.stopwatch.wakefulness.value, "off");
  });

  it("killed before its zero is found counting or begun, whichever is true by then", async () => {
    for (const [gone, elapsed] of [[1_000, -2_000], [10_000, 7_000]] as const) {
      const phone = new FakePhone();
      const first = new Page(phone);
      await first.stopwatch.start(COUNTED, 0);
      first.canter(2_000);
      phone.newLife(gone);
      const second = new Page(phone);
      await second.stopwatch.takeUp();
      assert.equal(second.stopwatch.elapsed()?.elapsed_ms, elapsed);
      await second.stopwatch.throwAway();
    }
  });
});

describe("a stop that was a slip", () => {
  it("takes the fences met so far with it when the run goes on", async () => {
    const page = new Page(new FakePhone());
    await page.stopwatch.start(PLAN, 0);
    page.canter(20_000);
    const attempt = { outing_id: PLAN.outing_id, fence_id: "018f0000-0000-7000-8000-000000000009", outcome: "clear" as const };
    await save("attempt", { ...attempt, canter_id: page.stopwatch.run!.id, canter_offset_ms: 20_000 });
    await save("attempt", attempt);
    await page.stopwatch.stop(0);
    const slip = page.stopwatch.saved_id.value;
    await page.stopwatch.keepRunning();
    page.canter(30_000);
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
    const first = new Page(phone);
    await first.stopwatch.start(PLAN, 0);
    first.canter(3_000);
    phone.newLife(40_000);
    const second = new Page(phone);
    await second.stopwatch.takeUp();
    assert.equal(second.phase, "running");
    assert.equal(second.stopwatch.elapsed()?.elapsed_ms, 43_000);
    second.canter(20_200);
    await second.stopwatch.stop(0);
    const [canter] = await canters();
    assert.deepEqual([canter?.elapsed_ms, canter?.clock, canter?.monotonic_ms, canter?.wall_ms], [63_200, "restored", null, 63_200]);
  });

  it("between stop and save loses nothing: the next life saves it, once", async () => {
    const phone = new FakePhone();
    const first = new Page(phone);
    await first.stopwatch.start(PLAN, 0);
    first.canter(60_000);
    const run = first.stopwatch.run;
    assert.ok(run);
    // what the disk holds when the process dies right after the stop stamp was written
    await here().db.runs.put({ id: run.id, logbook_id: "logbook", run, stopped: true });
    for (const life of [1, 2]) {
      phone.newLife(10_000 * life);
      await new Page(phone).stopwatch.takeUp();
    }
    assert.deepEqual((await canters()).map((canter) => canter.elapsed_ms), [60_000]);
    assert.deepEqual(await runs(), []);
  });

  it("after save but before the run was cleared finds no ghost running", async () => {
    const phone = new FakePhone();
    const first = new Page(phone);
    await first.stopwatch.start(PLAN, 0);
    first.canter(60_000);
    const run = first.stopwatch.run;
    await first.stopwatch.stop(0);
    await here().db.runs.put({ id: run?.id as string, logbook_id: "logbook", run, stopped: false });
    phone.newLife(5_000);
    const second = new Page(phone);
    await second.stopwatch.takeUp();
    assert.equal(second.phase, "ready");
    assert.deepEqual(await runs(), []);
  });

  it("with a changed wall clock before it died still gives the true time", async () => {
    const phone = new FakePhone();
    const first = new Page(phone);
    await first.stopwatch.start(PLAN, 0);
    first.canter(10_000);
    phone.changeWall(-3_600_000);
    first.canter(10_000);
    first.beat(true);
    await quiet();
    phone.newLife(5_000);
    const second = new Page(phone);
    await second.stopwatch.takeUp();
    second.canter(5_000);
    assert.equal(second.stopwatch.elapsed()?.elapsed_ms, 30_000);
  });
});

describe("two tabs", () => {
  it("starting both time one run, the first", async () => {
    const phone = new FakePhone();
    const [one, other] = [new Page(phone), new Page(phone)];
    await one.stopwatch.start(PLAN, 0);
    phone.awake(2_000);
    await other.stopwatch.start({ ...PLAN, distance_m: 999 }, 0);
    assert.equal(other.stopwatch.run?.id, one.stopwatch.run?.id);
    assert.equal(other.stopwatch.elapsed()?.elapsed_ms, 2_000);
    assert.equal((await runs()).length, 1);
  });

  it("the hidden one never writes over what the shown one has seen", async () => {
    const phone = new FakePhone();
    const [hidden, shown] = [new Page(phone), new Page(phone)];
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
    const [one, other] = [new Page(phone), new Page(phone)];
    await one.stopwatch.start(PLAN, 0);
    await other.stopwatch.takeUp();
    other.canter(60_000);
    await other.stopwatch.stop(0);
    one.beat(true);
    await quiet();
    assert.equal(one.phase, "ready");
    assert.deepEqual([(await runs()).length, (await canters()).length], [0, 1]);
  });
});

describe("slips", () => {
  it("a stop at once is asked about, and going on keeps the start", async () => {
    const page = new Page(new FakePhone());
    await page.stopwatch.start(PLAN, 0);
    page.phone.awake(400);
    await page.stopwatch.stop(0);
    assert.equal(page.phase, "short");
    assert.deepEqual(await canters(), []);
    page.phone.awake(600);
    await page.stopwatch.keepRunning();
    page.canter(59_000);
    await page.stopwatch.stop(0);
    assert.deepEqual((await canters()).map((canter) => canter.elapsed_ms), [60_000]);
  });

  it("an early stop that was saved is taken back when the run goes on, and saved anew", async () => {
    const page = new Page(new FakePhone());
    await page.stopwatch.start(PLAN, 0);
    page.canter(20_000);
    await page.stopwatch.stop(0);
    page.phone.awake(3_000);
    await page.stopwatch.keepRunning();
    assert.deepEqual(await canters(), []);
    page.phone.newLife(7_000); // and the page dies on top of it
    const next = new Page(page.phone);
    await next.stopwatch.takeUp();
    assert.equal(next.phase, "running");
    next.canter(30_000);
    await next.stopwatch.stop(0);
    assert.deepEqual((await canters()).map((canter) => canter.elapsed_ms), [60_000]);
  });

  it("a run thrown away comes back by undo, the clock having been kept", async () => {
    const page = new Page(new FakePhone());
    await page.stopwatch.start(PLAN, 0);
    page.canter(20_000);
    const run = await page.stopwatch.throwAway();
    assert.deepEqual([page.phase, await runs()], ["ready", []]);
    page.phone.awake(4_000);
    assert.ok(run);
    await page.stopwatch.bringBack(run);
    assert.equal(page.stopwatch.elapsed()?.elapsed_ms, 24_000);
    assert.equal((await runs()).length, 1);
  });

  it("a time no canter can have is kept for a question, not saved and not lost", async () => {
    const phone = new FakePhone();
    const first = new Page(phone);
    await first.stopwatch.start(PLAN, 0);
    first.canter(1_000);
    phone.newLife(9_000_000);
    const second = new Page(phone);
    await second.stopwatch.takeUp();
    await second.stopwatch.stop(0);
    assert.deepEqual([second.phase, second.stopwatch.saved_id.value, await canters()], ["stopped", null, []]);
    assert.equal((await runs()).length, 1);
  });
});

describe("a disk that refuses (fault ST-05)", () => {
  it("is told at the start, and the run goes on", async (test) => {
    const page = new Page(new FakePhone());
    test.mock.method(console, "error", () => undefined);
    const put = test.mock.method(Table.prototype, "put", () => Promise.reject(new DOMException("full", "QuotaExceededError")));
    await page.stopwatch.start(PLAN, 0);
    assert.deepEqual([page.phase, page.stopwatch.keeping.value], ["running", "unsaved"]);
    put.mock.restore();
    page.canter(60_000);
    await page.stopwatch.stop(0);
    assert.deepEqual((await canters()).map((canter) => canter.elapsed_ms), [60_000]);
  });

  it("is told at the stop, keeps the time on the screen and saves at the next try", async (test) => {
    const page = new Page(new FakePhone());
    await page.stopwatch.start(PLAN, 0);
    page.canter(60_000);
    test.mock.method(console, "error", () => undefined);
    const add = test.mock.method(Table.prototype, "add", () => Promise.reject(new DOMException("full", "QuotaExceededError")));
    await page.stopwatch.stop(0);
    assert.deepEqual([page.phase, page.stopwatch.keeping.value, page.stopwatch.saved_id.value], ["stopped", "unsaved", null]);
    add.mock.restore();
    page.phone.newLife(30_000); // even if the page dies before that, the stop stands
    const next = new Page(page.phone);
    await next.stopwatch.takeUp();
    assert.deepEqual((await canters()).map((canter) => canter.elapsed_ms), [60_000]);
    await page.stopwatch.saveAgain();
    assert.deepEqual((await canters()).map((canter) => canter.elapsed_ms), [60_000]);
  });
});
