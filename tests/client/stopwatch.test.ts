// The stopwatch against a phone that sleeps, is hidden, reloads, is killed and has its clock changed.

import assert from "node:assert/strict";
import { describe, it } from "node:test";
import { judge, type Judged } from "../../webclient/src/pace/judge.ts";
import { otherReadings, settleReading } from "../../webclient/src/pace/plausible.ts";
import { canterBody, pressSplit, pressStart, pressStop, READY, resume, type Run, tick, type Watch } from "../../webclient/src/pace/run.ts";
import { FakePhone, PLAN } from "./fakePhone.ts";

const ID = "018f0000-0000-7000-8000-0000000000aa";

/** A run in progress on a fake phone, ticking twice a second while awake. */
class Ride {
  phone = new FakePhone();
  watch: Watch = READY;
  started_ms = 0;

  start(): this {
    this.started_ms = this.phone.true_ms;
    this.watch = pressStart(this.watch, ID, PLAN, this.phone.sample());
    return this;
  }

  tick(): this {
    this.watch = tick(this.watch, this.phone.sample());
    return this;
  }

  canter(ms: number, every = 500): this {
    for (let left = ms; left > 0; left -= every) {
      this.phone.awake(Math.min(every, left));
      this.tick();
    }
    return this;
  }

  hide(): this {
    this.phone.visible = false;
    return this.tick();
  }

  show(): this {
    this.phone.visible = true;
    return this.tick();
  }

  /** The process dies: what was not ticked is gone, the stored run is taken up by the next life. */
  kill(ms: number): this {
    this.phone.newLife(ms);
    return this.tick();
  }

  stop(): Judged {
    this.watch = pressStop(this.watch, this.phone.sample());
    return judge(this.run().trace);
  }

  run(): Run {
    assert.notEqual(this.watch.phase, "ready");
    return (this.watch as Exclude<Watch, { phase: "ready" }>).run;
  }

  truth(): number {
    return this.phone.true_ms - this.started_ms;
  }
}

function assertTime(judged: Judged, ms: number): void {
  assert.ok(Math.abs(judged.elapsed_ms - ms) < 1e-6, `${judged.elapsed_ms} ms, not ${ms}`);
}

describe("a plain canter", () => {
  it("is timed by the monotonic clock and both readings are kept", () => {
    const ride = new Ride().start().canter(63_200);
    const judged = ride.stop();
    assertTime(judged, 63_200);
    assert.deepEqual(canterBody(ride.run(), judged), {
      ...PLAN, elapsed_ms: 63_200, monotonic_ms: 63_200, wall_ms: 63_200, clock: "agree", splits_ms: [], note: null,
    });
  });

  it("does not depend on ticks at all (throttled timers, fault TM-03)", () => {
    const ride = new Ride().start().hide().canter(600_000, 60_000).show();
    const judged = ride.stop();
    assertTime(judged, 600_000);
    assert.equal(judged.clock, "agree");
    const untouched = new Ride().start();
    untouched.phone.awake(600_000);
    assertTime(untouched.stop(), 600_000);
  });

  it("keeps splits as times since the start", () => {
    const ride = new Ride().start().canter(20_000);
    ride.watch = pressSplit(ride.watch, ride.phone.sample());
    ride.canter(21_500);
    ride.watch = pressSplit(ride.watch, ride.phone.sample());
    ride.canter(20_000);
    const judged = ride.stop();
    assert.deepEqual(canterBody(ride.run(), judged)?.splits_ms, [20_000, 41_500]);
  });
});

describe("a phone that sleeps", () => {
  it("is timed by the wall clock and marked so (fault TM-01)", () => {
    const ride = new Ride().start().hide();
    ride.phone.awake(30_000);
    ride.phone.asleep(90_000);
    const judged = ride.show().stop();
    assertTime(judged, 120_000);
    assert.equal(judged.clock, "slept");
    assert.deepEqual([judged.monotonic_ms, judged.wall_ms], [30_000, 120_000]);
    assert.ok(judged.sure);
  });

  it("adds up many naps, each too short to be told from two clocks read unevenly", () => {
    const ride = new Ride().start().hide();
    for (let nap = 0; nap < 100; nap += 1) {
      ride.phone.asleep(30);
      ride.canter(500);
    }
    const judged = ride.show().stop();
    assertTime(judged, 53_000);
    assert.equal(judged.clock, "slept");
  });

  it("is noticed though the page hears only on waking that it was hidden", () => {
    const ride = new Ride().start().canter(10_000);
    ride.phone.asleep(45_000);
    ride.phone.awake(300);
    const judged = ride.hide().show().canter(5_000).stop();
    assertTime(judged, 60_300);
    assert.equal(judged.clock, "slept");
  });

  it("is noticed by the silence when the page was never told that it was hidden", () => {
    const ride = new Ride().start().canter(10_000);
    ride.phone.awake(8_000);
    ride.phone.asleep(40_000);
    const judged = ride.stop();
    assertTime(judged, 58_000);
    assert.equal(judged.clock, "slept");
  });

  it("offers the other clock's time beside the one taken", () => {
    const ride = new Ride().start().hide();
    ride.phone.asleep(30_000);
    const judged = ride.show().canter(30_000).stop();
    assert.deepEqual(otherReadings(judged).map((one) => [one.elapsed_ms, one.clock]), [[30_000, "wall_changed"]]);
  });
});

describe("a wall clock that is changed", () => {
  for (const step of [-7_200_000, -3_600_000, -5_000, -400, 400, 5_000, 3_600_000, 86_400_000]) {
    it(`by ${step} ms while the page is watched leaves the time right and marked`, () => {
      const ride = new Ride().start().canter(30_000);
      ride.phone.changeWall(step);
      const judged = ride.canter(33_200).stop();
      assertTime(judged, 63_200);
      assert.equal(judged.clock, "wall_changed");
      assert.equal(judged.wall_ms, 63_200 + step);
    });
  }

  it("put back while the page is hidden leaves the time right, and asks", () => {
    const ride = new Ride().start().hide().canter(10_000);
    ride.phone.changeWall(-3_600_000);
    const judged = ride.canter(10_000).show().canter(20_000).stop();
    assertTime(judged, 40_000);
    assert.equal(judged.clock, "wall_changed");
    assert.equal(judged.sure, false);
  });

  it("put forward an hour while the page is hidden is seen through by the speed, and asked about", () => {
    const ride = new Ride().start().hide().canter(10_000);
    ride.phone.changeWall(3_600_000);
    const { chosen, others } = settleReading(ride.show().canter(50_000).stop(), PLAN.distance_m);
    assertTime(chosen, 60_000);
    assert.deepEqual([chosen.clock, chosen.sure], ["wall_changed", false]);
    assert.deepEqual(others.map((one) => one.elapsed_ms), [3_660_000]);
  });

  it("makes no sleeping phone's slow time a fast one, but offers the other", () => {
    const ride = new Ride().start().hide();
    ride.phone.awake(30_000);
    ride.phone.asleep(90_000);
    const { chosen, others } = settleReading(ride.show().stop(), 100);
    assertTime(chosen, 120_000);
    assert.deepEqual([chosen.clock, chosen.sure, others.map((one) => one.elapsed_ms)], ["slept", true, [30_000]]);
  });

  it("is doubted where the running clock's time is faster than any horse", () => {
    const ride = new Ride().start().canter(5_000);
    ride.phone.asleep(55_000); // locked, and the page was never told
    const { chosen } = settleReading(ride.canter(3_000).stop(), PLAN.distance_m);
    assertTime(chosen, 63_000);
    assert.deepEqual([chosen.clock, chosen.sure], ["slept", false]);
  });

  it("changed there and back while watched is still marked", () => {
    const ride = new Ride().start().canter(10_000);
    ride.phone.changeWall(60_000);
    ride.canter(10_000);
    ride.phone.changeWall(-60_000);
    const judged = ride.canter(10_000).stop();
    assertTime(judged, 30_000);
    assert.equal(judged.clock, "wall_changed");
  });

  it("changed after a sleep does not spoil the sleep's time", () => {
    const ride = new Ride().start().hide();
    ride.phone.asleep(30_000);
    ride.show().canter(10_000);
    ride.phone.changeWall(-30_000);
    const judged = ride.canter(10_000).stop();
    assertTime(judged, 50_000);
    assert.equal(judged.clock, "slept");
  });

  it("slewing slowly is not a change of a stretch, but is told when it adds up", () => {
    const ride = new Ride().start();
    for (let second = 0; second < 60; second += 1) {
      ride.canter(1_000);
      ride.phone.changeWall(10);
    }
    const judged = ride.stop();
    assertTime(judged, 60_000);
    assert.equal(judged.clock, "wall_changed");
  });
});

describe("a page that goes away", () => {
  it("comes back running with the true time after a reload", () => {
    const judged = new Ride().start().canter(20_000).kill(1_300).canter(10_000).stop();
    assertTime(judged, 31_300);
    assert.equal(judged.clock, "restored");
    assert.equal(judged.monotonic_ms, null);
  });

  it("loses nothing when killed right after the start, or twice, or for long (fault ST-09)", () => {
    assertTime(new Ride().start().kill(40_000).stop(), 40_000);
    assertTime(new Ride().start().canter(5_000).kill(2_000).canter(5_000).kill(900_000).canter(1_000).stop(), 913_000);
  });

  it("keeps an earlier change of the wall clock out of the time", () => {
    const ride = new Ride().start().canter(10_000);
    ride.phone.changeWall(-3_600_000);
    const judged = ride.canter(10_000).kill(5_000).canter(10_000).stop();
    assertTime(judged, 35_000);
    assert.equal(judged.clock, "restored");
    assert.deepEqual(otherReadings(judged), []);
  });

  it("says that it cannot know when the wall clock went back meanwhile", () => {
    const ride = new Ride().start().canter(30_000);
    ride.phone.changeWall(-60_000);
    const judged = ride.kill(5_000).canter(10_000).stop();
    assert.equal(judged.clock, "restored");
    assert.equal(judged.sure, false);
    assertTime(judged, 40_000);
  });
});

describe("taps", () => {
  it("a second start changes nothing", () => {
    const ride = new Ride().start().canter(10_000);
    const before = ride.watch;
    ride.watch = pressStart(ride.watch, "another", { ...PLAN, distance_m: 1 }, ride.phone.sample());
    assert.equal(ride.watch, before);
  });

  it("a bounce does not stop the run", () => {
    const ride = new Ride().start().canter(120);
    ride.watch = pressStop(ride.watch, ride.phone.sample());
    assert.equal(ride.watch.phase, "running");
    assertTime(ride.canter(59_880).stop(), 60_000);
  });

  it("a stop within half a second is asked about, and the run can go on as if nothing had been", () => {
    const ride = new Ride().start().canter(400);
    ride.watch = pressStop(ride.watch, ride.phone.sample());
    assert.equal(ride.watch.phase, "short");
    ride.phone.awake(6_000);
    ride.watch = resume(ride.watch);
    assertTime(ride.canter(53_600).stop(), 60_000);
  });

  it("an early stop can be undone later, the clock having been kept", () => {
    const ride = new Ride().start().canter(20_000);
    assertTime(ride.stop(), 20_000);
    ride.phone.awake(4_000);
    ride.watch = resume(ride.watch);
    assertTime(ride.canter(36_000).stop(), 60_000);
  });

  it("a double stop, a split or a tick after the stop change nothing", () => {
    const ride = new Ride().start().canter(60_000);
    ride.stop();
    const stopped = ride.watch;
    ride.phone.awake(150);
    const sample = ride.phone.sample();
    for (const press of [pressStop, pressSplit, tick]) assert.equal(press(stopped, sample), stopped);
  });

  it("a double tap on the split counts once", () => {
    const ride = new Ride().start().canter(10_000);
    ride.watch = pressSplit(ride.watch, ride.phone.sample());
    ride.canter(150);
    ride.watch = pressSplit(ride.watch, ride.phone.sample());
    assert.deepEqual(ride.run().splits_ms, [10_000]);
  });

  it("nothing happens to a watch that is ready", () => {
    const sample = new FakePhone().sample();
    for (const press of [pressStop, pressSplit, tick]) assert.equal(press(READY, sample), READY);
    assert.equal(resume(READY), READY);
  });
});

describe("times no canter can have", () => {
  it("make no body, and no reading of them is offered", () => {
    const ride = new Ride().start().canter(1_000);
    const never = judge({ ...ride.run().trace, stretches: [] });
    assert.equal(canterBody(ride.run(), never), null);
    ride.kill(7_300_000);
    assert.equal(canterBody(ride.run(), ride.stop()), null);
  });

  it("a shorter reading taken instead leaves out the splits that lie behind its end", () => {
    const ride = new Ride().start().hide();
    ride.phone.asleep(90_000);
    ride.show().canter(10_000);
    ride.watch = pressSplit(ride.watch, ride.phone.sample());
    ride.canter(10_000);
    const [shorter] = otherReadings(ride.stop());
    assert.ok(shorter);
    assert.deepEqual(canterBody(ride.run(), shorter)?.splits_ms, []);
  });

  it("a raw reading more than a week away is no witness and is left out", () => {
    const ride = new Ride().start().canter(30_000);
    ride.phone.changeWall(-900_000_000);
    const judged = ride.canter(30_000).stop();
    const body = canterBody(ride.run(), judged);
    assert.deepEqual([body?.elapsed_ms, body?.wall_ms, body?.monotonic_ms], [60_000, null, 60_000]);
  });
});
