// Calibrations: the vectors that the server runs too, what is typed, and several canters against one target.

import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { describe, it } from "node:test";
import { BadInput } from "../../webclient/src/pace/badInput.ts";
import { calibrate, putRight, type Walks } from "../../webclient/src/pace/calibration.ts";
import { legs } from "../../webclient/src/pace/legs.ts";
import { sense } from "../../webclient/src/pace/sense.ts";
import { speed } from "../../webclient/src/pace/speed.ts";
import { BLANK, calibrationBody, draftOf, factorOf, isOdd, readDraft, troubles, withInstrument } from "../../webclient/src/screens/tracks/calibrationDraft.ts";

const read = (name: string) => JSON.parse(readFileSync(new URL(`../../fixtures/contract/${name}.json`, import.meta.url), "utf8"));
const VECTORS: { input: Walks & { reading_m: number }; expected: Record<string, number | string> }[] = read("calibration");
const SENSES: { input: { distance_m: number; distance_u_m: number; elapsed_ms: number[]; target_speed_mpm: number }; expected: Record<string, number | null> }[] = read("pace_sense");

function assertClose(one: unknown, other: number, what: string): void {
  assert.ok(typeof one === "number" && Math.abs(one - other) <= 1e-9 * Math.max(1, Math.abs(other)), `${what}: ${one} is not ${other}`);
}

describe("the vectors shared with the server", () => {
  for (const { input, expected } of VECTORS) {
    it(JSON.stringify(input), () => {
      const run = () => {
        const by = calibrate(input);
        return { ...by, ...putRight(input.reading_m, by) } as Record<string, unknown>;
      };
      if ("refused" in expected) return assert.throws(run, (error) => error instanceof BadInput && error.field === expected.refused);
      const got = run();
      for (const [name, value] of Object.entries(expected)) assertClose(got[name], value as number, name);
    });
  }
  it("are there", () => assert.ok(VECTORS.length >= 15 && SENSES.length >= 5));

  for (const { input, expected } of SENSES) {
    it(JSON.stringify(input), () => {
      const { distance_m, distance_u_m, elapsed_ms, target_speed_mpm } = input;
      const found = sense(elapsed_ms.map((ms) => speed({ distance_m, distance_u_m, measured_by: "wheel", elapsed_ms: ms })));
      assertClose(found.mean_mpm - target_speed_mpm, expected.bias_mpm!, "bias_mpm");
      for (const [mine, theirs] of [["spread_mpm", "spread_mpm"], ["mean_u_mpm", "bias_u_mpm"]] as const) {
        if (expected[theirs] === null) assert.equal(found[mine], null);
        else assertClose(found[mine], expected[theirs]!, theirs);
      }
    });
  }
});

describe("a calibration as it is typed", () => {
  const draft = { ...BLANK, instrument: "Yard wheel", walks: ["50.3", "50,5", "50.4", ""] };

  it("becomes a body, the empty boxes left out", () => {
    assert.deepEqual(calibrationBody(draft, "2026-05-03"), {
      instrument: "Yard wheel", measured_by: "wheel", taped_distance_m: 50, taped_u_m: null, walked_m: [50.3, 50.5, 50.4], reading_step_m: 0.1,
      date: "2026-05-03", note: null,
    });
    assertClose(factorOf({ ...draft, instrument: "" })?.factor, 50 / 50.4, "the factor is shown before there is a name");
  });
  it("keeps its day when it is put right later", () => {
    const body = { ...calibrationBody(draft, "2026-05-03")!, taped_u_m: 0.02 };
    const again = calibrationBody(draftOf(body), "2027-01-01", body);
    assert.deepEqual(again, body);
  });
  it("lacks what it lacks", () => {
    assert.deepEqual(troubles(BLANK), ["need_instrument", "need_walks"]);
    assert.deepEqual(troubles({ ...draft, taped: "5" }), ["need_taped"]);
    for (const walks of [["50", "50"], ["50", "50", "x"], ["50", "50", "0"], []]) assert.deepEqual(troubles({ ...draft, walks }), ["need_walks"]);
    assert.equal(factorOf(BLANK), null);
  });
  it("takes the step of what is walked with", () => {
    assert.deepEqual([withInstrument(draft, "paces").step, withInstrument({ ...draft, step: "1" }, "wheel").step], ["1", "0.1"]);
  });
  it("asks about a wheel that is far off, and not about the length of a pace", () => {
    const yards = { ...draft, walks: ["60", "60", "60"] };
    assert.deepEqual([isOdd(draft, factorOf(draft)!), isOdd(yards, factorOf(yards)!)], [false, true]);
    assert.equal(isOdd({ ...yards, measured_by: "paces" }, factorOf(yards)!), false);
  });
  it("half typed is read back, and a broken draft falls back", () => {
    assert.deepEqual(readDraft(JSON.stringify(draft), BLANK), draft);
    for (const text of ["{", '{"walks":3}', '{"measured_by":"eye"}']) assert.deepEqual(readDraft(text, draft), draft);
  });
});

describe("the speed from flag to flag", () => {
  const canter = { distance_m: 400, distance_u_m: 4, measured_by: "wheel" as const, elapsed_ms: 60_000, splits_ms: [15_000, 30_000, 50_000], flags_m: [100, 200, 300] };
  it("is worked out where each flag was tapped", () => {
    assert.deepEqual(legs(canter).map(({ pace }) => Math.round(pace.speed_mpm)), [400, 400, 300, 600]);
    assert.deepEqual(legs(canter).map(({ from_ms, to_ms }) => [from_ms, to_ms]), [[0, 15_000], [15_000, 30_000], [30_000, 50_000], [50_000, 60_000]]);
  });
  it("carries the track's relative uncertainty and the hand's on each leg", () => {
    // by hand: 400 · √((1 %)² + (0.1 / 15)²) = 4.81
    assertClose(Number(legs(canter)[0]!.pace.speed_u_mpm.toFixed(3)), 4.807, "u");
    assertClose(legs({ ...canter, distance_u_m: null })[0]!.pace.distance_u_m, 1, "assumed for a wheel");
  });
  it("is not guessed where a flag was missed or the track has none", () => {
    assert.deepEqual(legs({ ...canter, splits_ms: [15_000, 30_000] }), []);
    assert.deepEqual(legs({ ...canter, flags_m: [] }), []);
    assert.deepEqual(legs({ ...canter, splits_ms: [], flags_m: [] }), []);
    assert.deepEqual(legs({ ...canter, distance_m: 300 }), []);
  });
});
