// The phone's location as a second witness: what stands, what leaps, what is missing, and how far and how fast.
// The trial is the project's fault FD-05; noise is drawn anew for many seeds.

import assert from "node:assert/strict";
import { describe, it } from "node:test";

import { metresBetween, metresPerDegree } from "../../webclient/src/location/earth.ts";
import { agreement } from "../../webclient/src/location/agree.ts";
import { lengthOf, measure } from "../../webclient/src/location/track.ts";
import { at, chance, normal, ride, START_MS, wander } from "./tracePoints.ts";

const SEEDS = Array.from({ length: 30 }, (_, n) => n + 1);
const within = (half: number) => (seed: number) => {
  const next = chance(seed);
  return () => (2 * next() - 1) * half;
};
const spread = (sd: number) => (seed: number) => {
  const next = normal(seed);
  return () => sd * next();
};
const still = (): [number, number] => [0, 0];
const straight = (mps: number) => (s: number): [number, number] => [mps * s, 0];
const round = (radius: number, mps: number) => (s: number): [number, number] => [radius * Math.cos((mps * s) / radius), radius * Math.sin((mps * s) / radius)];
const rms = (values: number[]): number => Math.sqrt(values.reduce((sum, value) => sum + value ** 2, 0) / values.length);

describe("ten minutes of standing", () => {
  const noises: [string, (seed: number) => () => number, number][] = [
    ["± 8 m anew each second", within(8), 8],
    ["normal, 8 m", spread(8), 8],
    ["normal, 8 m, and a phone that believes it knows better", spread(8), 3],
    ["wandering 8 m, remembered for 30 s", (seed) => wander(seed, 8, 30), 8],
    ["wandering 4 m, remembered for 20 s", (seed) => wander(seed, 4, 20), 5],
  ];
  for (const [name, noise, accuracy] of noises) {
    it(`is less than 10 m: ${name}`, () => {
      for (const seed of SEEDS) {
        const { moved } = measure(ride(600, still, noise(seed), { accuracy }));
        assert.ok((moved?.distance_m ?? 0) < 10, `seed ${seed}: ${moved?.distance_m} m`);
      }
    });
  }
  it("has no speed at all", () => assert.equal(measure(ride(600, still, within(8)(1), { accuracy: 8 })).moved, null));
});

describe("standing, one fix of a mast, a gap, then 400 m straight (FD-05)", () => {
  const RIDDEN_S = 60;
  const replay = (seed: number) => [
    ...ride(600, still, within(8)(seed), { accuracy: 8 }),
    at(601, 2000, 0, 900),
    ...ride(RIDDEN_S, straight(6.7), within(3)(seed + 1000), { from: 621 }),
  ];
  it("is within 3 % of the speed and the length, for every seed, and says how sure that is", () => {
    for (const seed of SEEDS) {
      const { moved } = measure(replay(seed));
      assert.ok(Math.abs(moved!.speed_mpm / 402 - 1) < 0.03, `seed ${seed}: ${moved!.speed_mpm} m/min`);
      assert.ok(Math.abs(moved!.distance_m / (6.7 * RIDDEN_S) - 1) < 0.03, `seed ${seed}: ${moved!.distance_m} m`);
      assert.ok(moved!.speed_u_mpm > 2 && moved!.speed_u_mpm < 12, `seed ${seed}: ± ${moved!.speed_u_mpm}`);
    }
  });
  it("leaves out the mast's fix and shows the gap as a gap", () => {
    const measured = measure(replay(1));
    assert.equal(measured.coarse, 1);
    assert.deepEqual(measured.gaps, [{ from_ms: START_MS + 600_000, to_ms: START_MS + 621_000 }]);
    assert.deepEqual(measured.stretches.map((stretch) => stretch.length), [601, RIDDEN_S + 1]);
    assert.ok(measured.stretches[0]!.every((moment) => !moment.moving && moment.speed_mps === 0));
  });
  it("bridges nothing: a kilometre ridden in the gap adds no metre", () => {
    const first = ride(60, straight(6.7), within(3)(5));
    const then = ride(60, (s) => [1402 + 6.7 * s, 0], within(3)(6), { from: 160 });
    const { moved, gaps } = measure([...first, ...then]);
    assert.equal(gaps.length, 1);
    assert.ok(Math.abs(moved!.distance_m - 804) < 0.03 * 804, `${moved!.distance_m}`);
    assert.equal(moved!.moving_s, 120);
  });
});

describe("the uncertainty", () => {
  // W3C Geolocation says 95 %, Android 68 % for the radius; 68 % is 1.515 standard deviations of one axis
  for (const [name, noise] of [["independent", spread(3.3)], ["wandering", (seed: number) => wander(seed, 3.3, 30)]] as const) {
    it(`covers the error of ${name} fixes that are as good as the phone says`, () => {
      const seeds = Array.from({ length: 150 }, (_, n) => n + 1);
      const scores = seeds.map((seed) => {
        const { distance_m, distance_u_m } = measure(ride(60, straight(6.7), noise(seed), { accuracy: 5 })).moved!;
        return (distance_m - 402) / distance_u_m;
      });
      assert.ok(rms(scores) < 1.2 && rms(scores) > 0.3, `${rms(scores)}`);
    });
  }
  it("grows where the path bends, by at least what the bend costs", () => {
    for (const radius of [20, 30, 50]) {
      const { moved } = measure(ride(120, round(radius, 6), within(2)(radius)));
      assert.ok(moved!.speed_mpm < 365 && Math.abs(moved!.speed_mpm - 360) < 2 * moved!.speed_u_mpm, `${radius}: ${moved!.speed_mpm} ± ${moved!.speed_u_mpm}`);
    }
  });
  it("grows with the radius that the phone gives", () => {
    const us = [3, 6, 12].map((accuracy) => measure(ride(60, straight(6.7), within(1)(1), { accuracy })).moved!.speed_u_mpm);
    assert.ok(us[0]! < us[1]! && us[1]! < us[2]!);
  });
});

describe("odd traces", () => {
  it("with a halt before and after are timed over the part that moved", () => {
    for (const seed of SEEDS) {
      const { moved } = measure(ride(180, (s) => [6.7 * Math.min(60, Math.max(0, s - 60)), 0], within(3)(seed)));
      assert.ok(Math.abs(moved!.speed_mpm / 402 - 1) < 0.05, `seed ${seed}: ${moved!.speed_mpm}`);
    }
  });
  it("leap there and back: the leap is left out though the phone is sure of it", () => {
    const points = ride(60, straight(6.7), within(1)(3));
    points[30] = at(30, 2000, 900, 4);
    const { moved, jumps, gaps } = measure(points);
    assert.deepEqual([jumps, gaps], [1, []]);
    assert.ok(Math.abs(moved!.distance_m - 402) < 8);
  });
  it("that begin somewhere else go on where the phone really is", () => {
    const { moved, gaps } = measure([at(0, 2000, 0, 20), ...ride(60, straight(6.7), within(1)(4), { from: 1 })]);
    assert.equal(gaps.length, 1);
    assert.ok(Math.abs(moved!.distance_m - 402) < 8);
  });
  it("have no speed with one point, or with none", () => {
    assert.deepEqual([measure([]).moved, measure([at(0, 0, 0)]).moved], [null, null]);
    assert.deepEqual(measure([]).stretches, []);
  });
  it("of a recorder with one fix in 8 s have no gaps between them", () => {
    const points = ride(240, straight(6.7), within(2)(9)).filter((_, s) => s % 8 === 0);
    const { moved, gaps } = measure(points);
    assert.deepEqual(gaps, []);
    assert.ok(Math.abs(moved!.speed_mpm / 402 - 1) < 0.03, `${moved!.speed_mpm}`);
  });
  it("do not mind the antimeridian", () => {
    const shifted = ride(60, straight(6.7), within(1)(2)).map((point) => {
      const longitude = point.longitude + 1.6 + 179.998;
      return { ...point, longitude: longitude > 180 ? longitude - 360 : longitude };
    });
    assert.ok(Math.abs(measure(shifted).moved!.distance_m - 402) < 8);
  });
});

describe("beside the stopwatch", () => {
  // E_n of ISO 13528:2022 (and ISO/IEC 17043), with k = 2: agreement is |E_n| up to 1
  it("agrees while the two are no more than their expanded uncertainties apart", () => {
    const agreed = agreement({ speed_mpm: 400, speed_u_mpm: 3 }, { speed_mpm: 409, speed_u_mpm: 4 });
    assert.deepEqual(agreed, { en: 0.9, agrees: true });
    assert.equal(agreement({ speed_mpm: 400, speed_u_mpm: 3 }, { speed_mpm: 389, speed_u_mpm: 4 }).agrees, false);
    assert.equal(agreement({ speed_mpm: 400, speed_u_mpm: 3 }, { speed_mpm: 390, speed_u_mpm: 4 }).en, -1);
  });
});

describe("metres on the Earth", () => {
  // Lengths of a degree on WGS 84 in m, as geodetic tables print them (from memory)
  const TABLE: [number, number, number][] = [[0, 110_574, 111_320], [15, 110_649, 107_550], [30, 110_852, 96_486], [45, 111_132, 78_847], [60, 111_412, 55_800], [75, 111_618, 28_902]];
  for (const [latitude, north, east] of TABLE) {
    it(`are those of the tables at ${latitude}°`, () => {
      const here = metresPerDegree(latitude);
      assert.ok(Math.abs(here.north - north) <= 1 && Math.abs(here.east - east) <= 1, `${here.north} ${here.east}`);
    });
  }
  it("add up along a course that was drawn, but not across a gap", () => {
    const points = [at(0, 0, 0), at(1, 300, 0), at(2, 300, 400), { ...at(3, 900, 400), breaks: true }, at(4, 900, 500)];
    assert.ok(Math.abs(lengthOf(points) - 800) < 0.1);
    assert.ok(Math.abs(metresBetween(points[0]!, points[2]!) - 500) < 0.1);
  });
});
