// Countdown, minute markers, sets and keys: what each does on a phone that sleeps, is killed and has its clock set.

import assert from "node:assert/strict";
import { describe, it } from "node:test";
import { type Cue, cuesBetween, nextMinute } from "../../webclient/src/pace/cues.ts";
import { whereabouts } from "../../webclient/src/pace/markers.ts";
import { canterBody, pressSplit, pressStart, pressStop, READY, type Run, tick, timeOf, type Watch } from "../../webclient/src/pace/run.ts";
import { stripOf } from "../../webclient/src/pace/strip.ts";
import { NOTHING_CHOSEN, repeatOf } from "../../webclient/src/screens/watch/choice.ts";
import { HeldKeys, watchKey } from "../../webclient/src/screens/watch/keys.ts";
import type { TimedCanter } from "../../webclient/src/entries/bodies.ts";
import { FakePhone, PLAN, seeded } from "./fakePhone.ts";

const COUNTED = { ...PLAN, start: "standing" as const, countdown_s: 5 };

function begun(plan = COUNTED): { phone: FakePhone; watch: Watch } {
  const phone = new FakePhone();
  return { phone, watch: pressStart(READY, "id", plan, phone.sample()) };
}

const runOf = (watch: Watch): Run => (watch as { run: Run }).run;

/** Ticks twice a second for `ms`. */
function awake(phone: FakePhone, watch: Watch, ms: number): Watch {
  let now = watch;
  for (let left = ms; left > 0; left -= 500) {
    phone.awake(Math.min(500, left));
    now = tick(now, phone.sample());
  }
  return now;
}

function stopped(phone: FakePhone, watch: Watch): TimedCanter {
  const end = pressStop(watch, phone.sample());
  assert.equal(end.phase, "stopped");
  return canterBody(runOf(end), timeOf(runOf(end))) as TimedCanter;
}

describe("a countdown", () => {
  it("starts at its exact zero, and says so in what is kept", () => {
    const { phone, watch } = begun();
    assert.equal(timeOf(runOf(watch)).elapsed_ms, -5000);
    const body = stopped(phone, awake(phone, watch, 65_000));
    assert.deepEqual([body.elapsed_ms, body.monotonic_ms, body.wall_ms, body.clock, body.start, body.countdown_s], [60_000, 60_000, 60_000, "agree", "standing", 5]);
  });

  it("is called off by one tap, but not by the echo of the tap that began it", () => {
    const { phone, watch } = begun();
    phone.awake(200);
    assert.equal(pressStop(watch, phone.sample()), watch);
    phone.awake(200);
    assert.equal(pressStop(watch, phone.sample()).phase, "ready");
    phone.awake(4_599);
    assert.equal(pressStop(watch, phone.sample()).phase, "ready");
    phone.awake(1); // zero: from here on it is a stop
    assert.equal(pressStop(watch, phone.sample()).phase, "short");
  });

  it("marks no flag before its zero", () => {
    const { phone, watch } = begun();
    phone.awake(4_000);
    assert.equal(pressSplit(watch, phone.sample()), watch);
    phone.awake(9_000);
    assert.deepEqual(runOf(pressSplit(watch, phone.sample())).splits_ms, [8_000]);
  });

  it("keeps its zero where the phone sleeps across it", () => {
    const { phone, watch } = begun();
    phone.visible = false;
    let now = tick(watch, phone.sample());
    phone.asleep(30_000);
    phone.visible = true;
    now = tick(now, phone.sample());
    const body = stopped(phone, awake(phone, now, 35_000));
    assert.deepEqual([body.elapsed_ms, body.clock, body.wall_ms, body.monotonic_ms], [60_000, "slept", 60_000, 30_000]);
  });

  it("keeps its zero where it is killed in it, and where it is killed after it", () => {
    for (const [before, gone] of [[2_000, 1_000], [2_000, 20_000], [4_999, 1]] as const) {
      const { phone, watch } = begun();
      let now = awake(phone, watch, before);
      phone.newLife(gone);
      now = tick(now, phone.sample());
      const body = stopped(phone, awake(phone, now, 65_000 - before - gone));
      assert.deepEqual([body.elapsed_ms, body.clock, body.monotonic_ms], [60_000, "restored", null]);
    }
  });

  it("keeps its zero where the clock is changed in it", () => {
    for (const by of [-3_600_000, 3_600_000, 5_000]) {
      const { phone, watch } = begun();
      const now = awake(phone, watch, 2_000);
      phone.changeWall(by);
      const body = stopped(phone, awake(phone, now, 63_000));
      assert.deepEqual([body.elapsed_ms, body.clock, body.wall_ms], [60_000, "wall_changed", 60_000 + by]);
    }
  });

  it("gives no raw reading that the book cannot hold: a clock that stood still across the zero", () => {
    const { phone, watch } = begun();
    phone.visible = false;
    const now = tick(watch, phone.sample());
    phone.asleep(64_000);
    phone.awake(1_000);
    const body = stopped(phone, now);
    assert.deepEqual([body.elapsed_ms, body.monotonic_ms, body.wall_ms], [60_000, null, 60_000]);
  });

  it("with a thousand seeded stories of sleep and death never moves its zero", () => {
    for (let seed = 1; seed <= 1000; seed += 1) {
      const chance = seeded(seed);
      const { phone, watch } = begun({ ...COUNTED, countdown_s: [3, 5, 10][seed % 3]! });
      let now = watch;
      for (let deed = 0; deed < 8; deed += 1) {
        const ms = Math.floor(chance() * 4_000);
        if (chance() < 0.5) now = awake(phone, now, ms);
        else if (chance() < 0.5) phone.newLife(ms);
        else {
          phone.visible = false;
          now = tick(now, phone.sample());
          phone.asleep(ms + 100); // less than a reading's scatter would pass for none
          phone.visible = true;
        }
        now = tick(now, phone.sample());
      }
      now = awake(phone, now, 20_000);
      assert.ok(Math.abs(timeOf(runOf(now)).elapsed_ms - (phone.true_ms - 1000 * runOf(now).plan.countdown_s!)) < 1e-6, `seed ${seed}`);
    }
  });

  it("of a run that an earlier app kept is none", () => {
    const { countdown_s: _, set_id: __, flags_m: ___, ...old } = PLAN;
    const phone = new FakePhone();
    const watch = pressStart(READY, "id", old as typeof PLAN, phone.sample());
    const body = stopped(phone, awake(phone, watch, 60_000));
    assert.deepEqual([body.elapsed_ms, body.countdown_s, body.set_id, body.flags_m], [60_000, null, null, []]);
  });

  it("sounds each second and at zero, each once, and then the minutes", () => {
    const heard: Cue[] = [];
    for (let at = -5_000; at < 61_000; at += 170) heard.push(...cuesBetween(at, at + 170, null));
    assert.deepEqual(heard.map(({ kind, at_ms }) => [kind, at_ms]), [["count", -4_000], ["count", -3_000], ["count", -2_000], ["count", -1_000], ["go", 0], ["minute", 60_000]]);
    assert.deepEqual(cuesBetween(0, 59_999, null), [], "a tapped start has none at its zero");
  });
});

describe("where she should be", () => {
  it("at a minute, from the first flag and from the second", () => {
    assert.deepEqual(whereabouts(60, 400, 420), { metres: 400, flag: null, beyond_m: -20 });
    assert.deepEqual(whereabouts(120, 400, 420), { metres: 800, flag: null, beyond_m: 380 });
    assert.deepEqual(whereabouts(60, 400, 1200), { metres: 400, flag: 0, beyond_m: 400 });
  });
  it("against the nearest flag on the way", () => {
    assert.deepEqual(whereabouts(60, 400, 1200, [390, 800]), { metres: 400, flag: 1, beyond_m: 10 });
    assert.deepEqual(whereabouts(120, 400, 1200, [390, 810]), { metres: 800, flag: 2, beyond_m: -10 });
    assert.deepEqual(whereabouts(180, 400, 1200, [390, 810]), { metres: 1200, flag: null, beyond_m: 0 });
  });
  it("the next minute is the next whole one, also from a countdown", () => {
    assert.deepEqual([-4_000, 0, 59_999, 60_000].map(nextMinute), [60_000, 60_000, 60_000, 120_000]);
  });
});

describe("once more", () => {
  const { phone, watch } = begun({ ...COUNTED, track_id: "track", target_speed_mpm: 400, over_fences: true } as never);
  const body = stopped(phone, awake(phone, watch, 65_000));

  it("on the same day goes on with the set, named after its first canter", () => {
    const first = { record_id: "first", body };
    const second = { record_id: "second", body: { ...body, set_id: "first" } };
    for (const canter of [first, second]) {
      assert.deepEqual(repeatOf(canter, true), {
        outing_id: PLAN.outing_id, set_id: "first", track_id: "track", target_speed_mpm: 400, level_id: null, start: "standing", countdown_s: 5, over_fences: true,
      });
    }
  });
  it("on a later day is the same set-up in another outing, and no set", () => {
    const choice = repeatOf({ record_id: "first", body }, false);
    assert.deepEqual([choice.outing_id, choice.set_id, choice.track_id], [null, null, "track"]);
    assert.deepEqual(Object.keys(choice).filter((name) => !(name in NOTHING_CHOSEN)), []);
  });
});

describe("a key", () => {
  const press = (key: string, more = {}) => watchKey({ key, repeat: false, ctrlKey: false, altKey: false, metaKey: false, ...more });
  it("of a clicker may be a digit, which the screen gives its meaning", () => {
    assert.deepEqual(["1", "9", "0", "12", "F1"].map((key) => press(key)), [1, 9, null, null, null]);
    assert.equal(press("1", { repeat: true }), null);
    assert.equal(press("1", { ctrlKey: true }), null);
  });
  it("held down counts once, also where the clicker does not say that it repeats", () => {
    const held = new HeldKeys();
    assert.equal(held.fresh(" ", 1000), true);
    assert.equal(held.fresh(" ", 1000), true, "two screens may ask about one press");
    assert.deepEqual([1500, 1533, 1566, 2200].map((at) => held.fresh(" ", at)), [false, false, false, false]);
    assert.equal(held.fresh("1", 1600), true);
    held.up(" ");
    assert.equal(held.fresh(" ", 2210), true);
  });
  it("whose going up was never heard is a new press after a while", () => {
    const held = new HeldKeys();
    assert.deepEqual([1000, 1701].map((at) => held.fresh(" ", at)), [true, true]);
  });
});

describe("the strip of a canter", () => {
  it("puts fences and flags where their time falls, and speeds in the middle of their legs", () => {
    const leg = (from_ms: number, to_ms: number, speed_mpm: number) => ({ from_ms, to_ms, pace: { speed_mpm } as never });
    const strip = stripOf(60_000, [0, 30_000, 31_000, 32_000, 60_000], [20_000], [leg(0, 20_000, 400), leg(20_000, 60_000, 380)]);
    assert.deepEqual(strip.fences.map(({ x }) => Math.round(x)), [10, 160, 165, 170, 310]);
    assert.deepEqual(strip.fences.map(({ row }) => row), [0, 0, 1, 0, 0]);
    assert.deepEqual([strip.flags, strip.legs.map(({ x, mpm }) => [x, mpm])], [[110], [[60, 400], [210, 380]]]);
  });
  it("keeps a fence tapped after the stop within it", () => assert.equal(stripOf(60_000, [90_000], [], []).fences[0]!.x, 310));
});
