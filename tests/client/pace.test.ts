// Speed, its uncertainty and lateness: the vectors that the server runs too, and checks worked by hand.

import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { describe, it } from "node:test";
import { BadInput } from "../../webclient/src/pace/badInput.ts";
import { lateness } from "../../webclient/src/pace/lateness.ts";
import { earlyOrLate, headline, type Phrase, plusMinus, tenths, verdict } from "../../webclient/src/pace/phrases.ts";
import { differ, differenceU, speed, type Timing } from "../../webclient/src/pace/speed.ts";

interface Vector {
  input: Timing & { target_speed_mpm: number | null };
  expected: Record<string, number | string>;
}

const read = (path: string) => JSON.parse(readFileSync(new URL(path, import.meta.url), "utf8"));
const VECTORS: Vector[] = read("../../fixtures/contract/pace.json");
const WORDS: Record<string, string> = read("../../webclient/src/words/en-GB/pace.json");

function say(phrase: Phrase): string {
  const template = WORDS[phrase.key];
  assert.ok(template !== undefined, `no words for ${phrase.key}`);
  return template.replace(/\{(\w+)\}/g, (_, name) => String(phrase.values[name]));
}

function run(input: Vector["input"]): Record<string, unknown> {
  const pace = speed(input);
  const late = input.target_speed_mpm === null ? null : lateness(pace, input.target_speed_mpm);
  return { ...pace, ...late, headline: say(headline(pace, late)) };
}

function close(one: unknown, other: number | string): boolean {
  if (typeof one !== "number" || typeof other !== "number") return one === other;
  return Math.abs(one - other) <= 1e-9 * Math.max(1, Math.abs(other));
}

describe("the vectors shared with the server", () => {
  for (const { input, expected } of VECTORS) {
    it(JSON.stringify(input), () => {
      if ("refused" in expected) {
        assert.throws(() => run(input), (error) => error instanceof BadInput && error.field === expected.refused);
        return;
      }
      const got = run(input);
      for (const [name, value] of Object.entries(expected)) {
        assert.ok(close(got[name], value), `${name}: ${got[name]} is not ${value}`);
      }
    });
  }
  it("are there", () => assert.ok(VECTORS.length >= 20));
});

describe("lateness", () => {
  it("counts late as positive", () => {
    const slow = lateness(speed({ distance_m: 420, elapsed_ms: 63_200, measured_by: "wheel" }), 420);
    assert.equal(say(earlyOrLate(slow.seconds_late, "seconds")), "3.2 s late");
    assert.equal(say(earlyOrLate(slow.metres_late, "metres")), "22.4 m late");
    const fast = lateness(speed({ distance_m: 420, elapsed_ms: 58_000, measured_by: "wheel" }), 420);
    assert.equal(say(earlyOrLate(fast.seconds_late, "seconds")), "2.0 s early");
    assert.equal(say(earlyOrLate(0.02, "metres")), "0.0 m");
  });

  it("says when it is too close to call, and not before", () => {
    const close_call = lateness(speed({ distance_m: 420, elapsed_ms: 61_200, measured_by: "wheel" }), 420);
    assert.match(say(verdict(close_call)), /^Too close to call/);
    const late = lateness(speed({ distance_m: 420, elapsed_ms: 63_200, measured_by: "wheel" }), 420);
    assert.match(say(verdict(late)), /^Slower/);
  });

  it("rounds halves away from zero and shows one decimal", () => {
    assert.deepEqual([0, 0.04, 0.05, 1.25, -1.25, 8].map(tenths), ["0.0", "0.0", "0.1", "1.3", "1.3", "8.0"]);
  });
});

describe("two canters", () => {
  // Hand timing alone: the difference of two start-stop pairs has 2·√2·0.10 s as its two standard deviations
  // (from Faux and Godolphin, Am. J. Phys. 87(2):110, 2019: SD 0.10 s). On one track the wheel's error cancels.
  const at = (elapsed_ms: number) => speed({ distance_m: 400, elapsed_ms, measured_by: "wheel" });

  it("on one track are told apart from about 0.28 s on", () => {
    assert.equal(differ(at(60_000), at(60_270), true), false);
    assert.equal(differ(at(60_000), at(60_300), true), true);
  });

  it("on one track still differ by the track's error on the difference itself (JCGM 100:2008, F.1.2.4)", () => {
    // by hand: √(0.6667² + 0.1667² + (200 · 0.01)²)
    assert.ok(Math.abs(differenceU(at(60_000), at(120_000), true) - 2.1148) < 1e-4);
  });

  it("on different tracks need far more", () => {
    assert.equal(differ(at(60_000), at(60_300)), false);
    assert.equal(differ(at(60_000), at(62_000)), true);
    assert.ok(differenceU(at(60_000), at(60_300), false) > 5 * differenceU(at(60_000), at(60_300), true));
  });
});

it("a tape's ± is never shown as nothing", () => {
  assert.equal(plusMinus(speed({ distance_m: 10_000, elapsed_ms: 7_200_000, distance_u_m: 0, measured_by: "tape" })), 1);
});
