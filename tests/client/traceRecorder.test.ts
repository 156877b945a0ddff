// The recorder beside a whole stopwatch, over a pretend disk and a pretend phone: kept point by point, taken up
// after a killed page with a gap, one trace a canter whatever was tapped.

import "../../webclient/node_modules/fake-indexeddb/auto/index.mjs";

import assert from "node:assert/strict";
import { beforeEach, describe, it } from "node:test";

import type { Trace } from "../../webclient/src/entries/bodies.ts";
import type { Locator } from "../../webclient/src/location/fixes.ts";
import { pointsOf } from "../../webclient/src/location/points.ts";
import { keptOf } from "../../webclient/src/screens/trace/kept.ts";
import { Recorder, TRACED, tracing } from "../../webclient/src/screens/trace/recorder.ts";
import type { Device } from "../../webclient/src/screens/watch/device.ts";
import { Stopwatch } from "../../webclient/src/screens/watch/stopwatch.ts";
import { openPhoneDb } from "../../webclient/src/store/db.ts";
import { remember } from "../../webclient/src/store/little.ts";
import { here, logbookId, me, openDb } from "../../webclient/src/store/place.ts";
import { findRecords } from "../../webclient/src/store/read.ts";
import { FakePhone, PLAN } from "./fakePhone.ts";
import { START_MS } from "./tracePoints.ts";

/** A life of the page on one phone: its stopwatch, its recorder, and fixes told by hand. */
class Page implements Locator {
  phone: FakePhone;
  stopwatch: Stopwatch;
  recorder: Recorder;
  watching = new Map<number, [PositionCallback, PositionErrorCallback | null | undefined]>();

  constructor(phone: FakePhone) {
    this.phone = phone;
    const device: Device = { now: () => phone.sample(), at: () => phone.sample(), beat: () => () => undefined, keepAwake: () => ({ release: () => undefined }), touched: () => undefined, signal: () => undefined };
    this.stopwatch = new Stopwatch(device);
    this.recorder = new Recorder(this.stopwatch, this);
  }
  watchPosition(say: PositionCallback, fail?: PositionErrorCallback | null): number {
    this.watching.set(this.watching.size + 1, [say, fail]);
    return this.watching.size;
  }
  clearWatch(id: number): void {
    this.watching.delete(id);
  }
  /** So many seconds of riding north at 6.7 m/s, one fix each. */
  ride(seconds: number): void {
    for (let n = 0; n < seconds; n++) {
      this.phone.awake(1000);
      const s = this.phone.sample().wall_ms - FIRST_MS;
      for (const [say] of this.watching.values()) say({ coords: { latitude: 52 + (s / 1000) * 6e-5, longitude: -1.6, accuracy: 4 }, timestamp: START_MS + s } as GeolocationPosition);
    }
  }
  async start(plan = PLAN): Promise<void> {
    await this.stopwatch.start(plan, 0);
    await this.settled();
  }
  async stop(): Promise<void> {
    await this.stopwatch.stop(0);
    await this.settled();
  }
  async settled(): Promise<void> {
    for (let turns = 0; turns < 5; turns++) {
      await new Promise((done) => setTimeout(done, 10));
      await this.recorder.done;
    }
  }
}

let FIRST_MS = 0;
let phone: FakePhone;
let opened = 0;

const traces = async () => (await findRecords(here(), "trace", {})).map((row) => ({ ...row, body: row.body as unknown as Trace }));
const canters = () => findRecords(here(), "timed_canter", {});

beforeEach(async () => {
  logbookId.value = null;
  phone = new FakePhone();
  FIRST_MS = phone.sample().wall_ms;
  openDb.value = await openPhoneDb(`trace-${process.pid}-${++opened}`);
  me.value = { id: "11111111-1111-4111-8111-111111111111", display_name: "Rika" };
  logbookId.value = "22222222-2222-4222-8222-222222222222";
  remember(TRACED, true);
});

describe("a canter with the switch on", () => {
  it("leaves one trace with all its points, tied to it, and nothing behind", async () => {
    const page = new Page(phone);
    await page.start();
    page.ride(60);
    assert.deepEqual(tracing.value, { fixes: 60, accuracy_m: 4, trouble: null });
    await page.stop();
    const [[trace], [canter]] = [await traces(), await canters()];
    assert.deepEqual([trace!.body.canter_id, trace!.body.outing_id, trace!.body.source], [canter!.record_id, PLAN.outing_id, "phone"]);
    assert.equal(pointsOf(trace!.body).length, 60);
    assert.deepEqual([trace!.body.accuracy_m[0], trace!.body.breaks], [4, []]);
    assert.deepEqual([await keptOf(here()), page.watching.size, tracing.value], [[], 0, null]);
  });
  it("is kept point by point: a killed page loses none, goes on, and shows the time between as a gap", async () => {
    const first = new Page(phone);
    await first.start();
    first.ride(100);
    await first.settled();
    assert.deepEqual((await keptOf(here())).map((row) => row.points.length), [60, 40]);
    first.watching.clear(); // killed
    phone.awake(20_000);
    const second = new Page(phone);
    await second.stopwatch.takeUp();
    second.ride(30);
    await second.stop();
    const found = await traces();
    assert.equal(found.length, 1);
    const points = pointsOf(found[0]!.body);
    assert.deepEqual([points.length, found[0]!.body.breaks], [130, [100]]);
    assert.equal(points[100]!.at_ms! - points[99]!.at_ms!, 21_000);
  });
  it("killed between the stop and the saving is traced when the page is next opened", async () => {
    const first = new Page(phone);
    await first.start();
    first.ride(30);
    await first.settled();
    first.watching.clear();
    const kept = await keptOf(here());
    await first.stopwatch.stop(0);
    await first.settled();
    await openDb.value!.meta.bulkPut(kept.map((value) => ({ key: `trace ${value.run_id} 1 00000`, value }))); // as if it had died before
    await new Page(phone).settled();
    assert.deepEqual([(await traces()).length, await keptOf(here())], [1, []]);
  });
  it("whose stop was a slip goes on as one trace of the canter that counts", async () => {
    const page = new Page(phone);
    await page.start();
    page.ride(20);
    await page.stop();
    const [slip] = await canters();
    await page.stopwatch.keepRunning();
    await page.settled();
    page.ride(25);
    await page.stop();
    const [found, [canter]] = [await traces(), await canters()];
    assert.notEqual(canter!.record_id, slip!.record_id);
    assert.deepEqual(found.map(({ body }) => [body.canter_id, pointsOf(body).length]), [[canter!.record_id, 45]]);
  });
  it("thrown away leaves no trace; brought back in time it keeps it", async () => {
    const page = new Page(phone);
    await page.start();
    page.ride(20);
    await page.settled();
    const run = await page.stopwatch.throwAway();
    await page.settled();
    assert.equal(page.watching.size, 0);
    await page.stopwatch.bringBack(run!);
    await page.settled();
    page.ride(20);
    await page.settled();
    await page.stopwatch.throwAway();
    await new Page(phone).settled();
    assert.deepEqual([await traces(), await keptOf(here())], [[], []]);
  });
  it("records nothing before the zero of a countdown", async () => {
    const page = new Page(phone);
    await page.start({ ...PLAN, countdown_s: 10 });
    page.ride(40);
    await page.stop();
    assert.equal(pointsOf((await traces())[0]!.body).length, 31);
  });
});

describe("what the rider did not ask for", () => {
  it("is not asked of the phone, and leaves nothing", async () => {
    remember(TRACED, false);
    const page = new Page(phone);
    await page.start();
    assert.deepEqual([page.watching.size, tracing.value], [0, null]);
    page.ride(30);
    await page.stop();
    assert.deepEqual([await traces(), (await canters()).length], [[], 1]);
  });
  it("a refusal is said and the canter is timed as ever", async () => {
    const page = new Page(phone);
    await page.start();
    for (const [, fail] of page.watching.values()) fail?.({ code: 1 } as GeolocationPositionError);
    assert.equal(tracing.value?.trouble?.reason, "refused");
    phone.awake(60_000);
    await page.stop();
    assert.deepEqual([await traces(), (await canters()).length], [[], 1]);
  });
});
