// A set of intervals on the pretend phone's clocks: what is due, what was ridden, and what slips cost.

import assert from "node:assert/strict";
import { describe, it } from "node:test";
import { CHECK_MINUTES, cueBetween, cuesOf, minuteOf, nextCheck } from "../../webclient/src/conditioning/cues.ts";
import { minutesSeconds, riddenPhrase, speedPhrase, stepPhrase } from "../../webclient/src/conditioning/phrases.ts";
import {
  beginSet, canterNumber, elapsedOf, placeAt, pressEnd, pressLonger, pressOn, ridden, seenSet, segmentsOf, type SetPlan,
  type SetRun, totalMs, undoChange,
} from "../../webclient/src/conditioning/set.ts";
import { rememberedBody, troubles } from "../../webclient/src/conditioning/remembered.ts";
import { offered, recoveryState } from "../../webclient/src/conditioning/suggest.ts";
import { intervalSteps } from "../../webclient/src/conditioning/steps.ts";
import { FakePhone } from "./fakePhone.ts";

const PLAN: SetPlan = { outing_id: "outing", canters: 3, work_s: 180, walk_s: 120, walk_first_s: 900, speed_mpm: 350 };
const MIN = 60_000;
const NO_NORMALS = { resting_heart_rate_bpm: null, resting_respiration_bpm: null };

/** A set on a phone: minutes pass with a heartbeat each half second, taps come when told. */
class Ride {
  phone = new FakePhone();
  run: SetRun;

  constructor(plan: Partial<SetPlan> = {}) {
    this.run = beginSet("set", { ...PLAN, ...plan }, this.phone.sample());
  }

  ride(ms: number): this {
    for (let left = ms; left > 0; left -= 500) {
      this.phone.awake(Math.min(500, left));
      this.run = seenSet(this.run, this.phone.sample());
    }
    return this;
  }

  tap(how: (run: SetRun, sample: ReturnType<FakePhone["sample"]>) => SetRun): this {
    this.run = how(this.run, this.phone.sample());
    return this;
  }

  get place(): string {
    const { elapsed_ms } = elapsedOf(this.run, this.phone.sample());
    const place = this.run.ended_ms === null ? placeAt(this.run.segments, elapsed_ms) : null;
    return place === null ? "over" : `${place.segment.kind} ${canterNumber(this.run.segments, place.n)}, ${minutesSeconds(place.left_ms)}`;
  }
}

const works = (run: SetRun) => ridden(run.segments).map(({ work_s, rest_s }) => [work_s, rest_s]);

describe("a set", () => {
  it("is a walk, then canters with walks between and none after the last", () => {
    assert.deepEqual(segmentsOf(PLAN).map(({ kind }) => kind), ["walk_first", "canter", "walk", "canter", "walk", "canter"]);
    assert.deepEqual(segmentsOf({ ...PLAN, walk_first_s: 0, canters: 1 }), [{ kind: "canter", length_ms: 180_000 }]);
    assert.equal(totalMs(segmentsOf(PLAN)), (15 + 3 * 3 + 2 * 2) * MIN);
  });

  it("goes from walk to canter to walk by the clock alone, and ends by itself", () => {
    const ride = new Ride();
    assert.equal(ride.place, "walk_first 1, 15:00");
    assert.equal(ride.ride(15 * MIN + 1000).place, "canter 1, 2:59");
    assert.equal(ride.ride(3 * MIN).place, "walk 2, 1:59");
    assert.equal(ride.ride(10 * MIN - 2000).place, "canter 3, 0:01");
    assert.equal(ride.ride(5000).place, "over");
    assert.equal(ride.run.ended_ms, 28 * MIN);
    assert.deepEqual(works(ride.run), [[180, 120], [180, 120], [180, 0]]);
  });

  it("goes on through a locked phone and a killed page, by the wall clock", () => {
    const ride = new Ride().ride(10 * MIN);
    ride.phone.visible = false;
    ride.tap(seenSet);
    ride.phone.asleep(6 * MIN);
    ride.phone.visible = true;
    assert.equal(ride.tap(seenSet).place, "canter 1, 2:00");
    ride.phone.newLife(3 * MIN);
    assert.equal(ride.tap(seenSet).place, "walk 2, 1:00");
    assert.equal(elapsedOf(ride.run, ride.phone.sample()).clock, "restored");
  });

  it("ends on time even when nobody looked for hours, and the recovery counts from then", () => {
    const ride = new Ride().ride(1000);
    ride.phone.newLife(120 * MIN);
    assert.equal(ride.tap(seenSet).run.ended_ms, 28 * MIN);
    assert.equal(nextCheck(ride.run.segments, elapsedOf(ride.run, ride.phone.sample()).elapsed_ms), null);
  });

  it("lets the rider canter early, walk early and walk longer, and keeps what was ridden", () => {
    const ride = new Ride().ride(5 * MIN).tap(pressOn);
    assert.equal(ride.place, "canter 1, 3:00");
    ride.ride(2 * MIN).tap(pressOn).ride(MIN).tap((run, sample) => pressLonger(run, sample, MIN));
    assert.equal(ride.place, "walk 2, 2:00");
    ride.ride(2 * MIN + 3 * MIN + 2 * MIN + 3 * MIN);
    assert.deepEqual([ride.place, works(ride.run)], ["over", [[120, 180], [180, 120], [180, 0]]]);
  });

  it("ends where it is stopped: what was not ridden is left out", () => {
    const ride = new Ride({ walk_first_s: 0 }).ride(3 * MIN + 2 * MIN + 90_000).tap(pressEnd);
    assert.deepEqual([ride.place, works(ride.run)], ["over", [[180, 120], [90, 0]]]);
    const walking = new Ride({ walk_first_s: 0 }).ride(3 * MIN + 30_000).tap(pressEnd);
    assert.deepEqual(works(walking.run), [[180, 30]]);
    assert.deepEqual(works(new Ride().ride(MIN).tap(pressEnd).run), []);
  });

  it("drops a bounce, takes no tap after the end, and undoes a slip on a clock that went on", () => {
    const ride = new Ride({ walk_first_s: 0 }).ride(MIN);
    const before = ride.run;
    ride.tap(pressOn);
    ride.phone.awake(100);
    assert.equal(ride.tap(pressOn).place, "walk 2, 2:00");
    ride.ride(20_000).tap((run) => undoChange(run, before));
    assert.equal(ride.place, "canter 1, 1:40");
    ride.ride(20 * MIN);
    const over = ride.run;
    ride.tap(pressOn).tap(pressEnd).tap((run, sample) => pressLonger(run, sample, MIN));
    assert.deepEqual([ride.run.segments, ride.run.changes], [over.segments, over.changes]);
  });
});

describe("cues", () => {
  const segments = segmentsOf({ ...PLAN, canters: 2 });

  it("come before and at each canter, at each walk, at the end, and when recovery is judged", () => {
    const told = cuesOf(segments).map(({ kind, at_ms }) => `${kind} ${minutesSeconds(at_ms)}`);
    assert.deepEqual(told, [
      "ready 14:50", "canter 15:00", "walk 18:00", "ready 19:50", "canter 20:00", "over 23:00",
      ...CHECK_MINUTES.map((minute) => `check ${23 + minute}:00`),
    ]);
  });

  it("are told once, and only the newest after a gap", () => {
    assert.equal(cueBetween(segments, 0, 14 * MIN), null);
    assert.equal(cueBetween(segments, 14 * MIN, 14 * MIN + 50_000)?.kind, "ready");
    assert.equal(cueBetween(segments, 14 * MIN + 50_000, 14 * MIN + 51_000), null);
    assert.equal(cueBetween(segments, 0, 19 * MIN)?.kind, "walk");
  });

  it("say when the next rates are due", () => {
    assert.deepEqual(nextCheck(segments, 24 * MIN), { minute: 2, in_ms: MIN });
    assert.deepEqual(nextCheck(segments, 25 * MIN), { minute: 10, in_ms: 8 * MIN });
    assert.equal(nextCheck(segments, 23 * MIN + 45 * MIN), null);
  });

  it("put a check to the set minute it was meant for", () => {
    assert.deepEqual([0, 0.6, 1.2, 2.9, 3.2, 9.4, 10.8, 11.4, 28, 33.1, 41, 49, 60].map((minute) => minuteOf(minute * MIN)), [0, 1, 2, 2, 3, 10, 10, 11, 30, 33, 45, 45, 60]);
  });
});

describe("the speed set out", () => {
  it("stands with each canter that was ridden, and is null where nobody set one", () => {
    const speeds = (speed_mpm: number | null) => {
      const { run } = new Ride({ walk_first_s: 0, speed_mpm }).ride(20 * MIN);
      return ridden(run.segments, run.plan.speed_mpm).map((each) => each.speed_mpm);
    };
    assert.deepEqual([speeds(350), speeds(null)], [[350, 350, 350], [null, null, null]]);
  });
});

describe("a set from memory", () => {
  const typed = { horse_id: "horse", date: "2026-05-03", canters: 3, work_min: 4, walk_min: 2.5, speed_mpm: 400, note: " Uphill " };
  it("is canters alike with walks between, marked as remembered", () => {
    assert.deepEqual(rememberedBody(typed, "outing"), {
      outing_id: "outing", from_memory: true, note: "Uphill",
      intervals: [{ work_s: 240, rest_s: 150, speed_mpm: 400 }, { work_s: 240, rest_s: 150, speed_mpm: 400 }, { work_s: 240, rest_s: 0, speed_mpm: 400 }],
    });
    assert.deepEqual(rememberedBody({ ...typed, canters: 1, speed_mpm: null, note: "" }, "o").intervals, [{ work_s: 240, rest_s: 0, speed_mpm: null }]);
  });
  it("needs a horse and a day that has been", () => {
    const lacks = (more: object) => troubles({ ...typed, ...more }, "2026-05-04");
    assert.deepEqual([lacks({}), lacks({ date: "2026-05-04" }), lacks({ horse_id: null })], [[], [], ["need_horse"]]);
    for (const date of ["", "2026-05-05", "1989-12-31", "3 May"]) assert.deepEqual(lacks({ date }), ["need_date"]);
  });
});

describe("what to offer", () => {
  const steps = intervalSteps(6, 450);
  const set = (work_s: number, ...rates: number[]) => ({
    outing_id: "o", note: null, intervals: [{ work_s, rest_s: 0, speed_mpm: null }],
    from_memory: false, recoveries: rates.map((heart_rate_bpm) => ({ minute: 10, heart_rate_bpm, respiration_bpm: null })),
  });

  it("starts at the shortest", () => assert.equal(offered(steps, null, null), 0));

  it("offers the last one again, and one back after a slow recovery; never a longer one", () => {
    const states = [set(240), set(240, 58), set(240, 90), set(180, 90)].map((each) => offered(steps, each, recoveryState(each, NO_NORMALS)));
    assert.deepEqual(states, [1, 1, 0, 0]);
    assert.equal(offered(steps, set(420), null), 3);
    assert.equal(offered(steps, set(200), null), 0);
    assert.equal(offered(steps, set(60), null), 0);
  });

  it("knows no state without a rate", () => assert.equal(recoveryState(set(240), NO_NORMALS), null));
});

describe("words", () => {
  it("are counted down to 0:00 and up from 0:00", () => {
    assert.deepEqual([0, 1, 999, 1000, 59_001, 60_000, 3_600_000].map((ms) => minutesSeconds(ms)), ["0:00", "0:01", "0:01", "0:01", "1:00", "1:00", "60:00"]);
    assert.deepEqual([0, 999, 1000, 61_999].map((ms) => minutesSeconds(ms, Math.floor)), ["0:00", "0:00", "0:01", "1:01"]);
  });

  it("say a step, a speed and a set", () => {
    assert.deepEqual(stepPhrase({ canters: 3, work_min: 4, walk_min: 3 }).values, { canters: 3, work: 4, walk: 3 });
    assert.equal(speedPhrase([300, 300]).key, "conditioning.speed_one");
    assert.equal(speedPhrase([350, 400]).key, "conditioning.speed_range");
    const interval = (work_s: number) => ({ work_s, rest_s: 0, speed_mpm: null });
    assert.deepEqual(riddenPhrase([interval(180), interval(180)]), { key: "conditioning.ridden_alike", values: { canters: 2, work: "3:00" } });
    assert.deepEqual(riddenPhrase([interval(180), interval(95)]), { key: "conditioning.ridden_list", values: { works: "3:00, 1:35" } });
    assert.equal(riddenPhrase([]).key, "conditioning.ridden_none");
  });
});
