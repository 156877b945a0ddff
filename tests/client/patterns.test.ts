// Patterns of trouble: the chances against scipy's, what counts as one meeting, when something is said and
// when not, and what the rule does on made-up seasons whose truth is known.

import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { describe, it } from "node:test";
import type { Attempt, Fence, Going, Outcome, Presentation } from "../../webclient/src/entries/bodies.ts";
import { ASPECT_IDS, ASPECTS } from "../../webclient/src/patterns/aspects.ts";
import { byChance, sharedLevel } from "../../webclient/src/patterns/exactTest.ts";
import { findPatterns, type Found } from "../../webclient/src/patterns/find.ts";
import { type History, meetings } from "../../webclient/src/patterns/meetings.ts";
import { chancePhrase, percent, seenPhrase, wherePhrase } from "../../webclient/src/patterns/phrases.ts";
import { picture, WIDTH } from "../../webclient/src/patterns/picture.ts";
import { RULE } from "../../webclient/src/patterns/rule.ts";
import { counts, knownOf, sideOf } from "../../webclient/src/patterns/sides.ts";
import { fence, season, upTo } from "./pretendSeasons.ts";

const words = JSON.parse(readFileSync(new URL("../../webclient/src/words/en-GB/pattern.json", import.meta.url), "utf8"));

/** A history written short: one line an outing, each word a fence with its rein and a mark where it stopped.
 * `lR! d` reads: log from the right with a stop, ditch with nothing said. */
const FENCES: Record<string, Fence> = { l: fence("log"), p: fence("palisade"), d: fence("ditch"), w: fence("water"), c: fence("corner"), b: fence("brush"), t: fence("table"), r: fence("rail") };
const MARKS: Record<string, Outcome> = { "!": "refusal", ">": "run_out", o: "circle", F: "rider_fall", H: "horse_fall", x: "missed_flag", k: "knockdown" };
const NOTHING: Presentation = { rein: null, ground: null, way: null, landing: null, company: null, pace: null };

function history(lines: string[], more: { going?: (Going | null)[]; from_memory?: boolean; dates?: string[] } = {}): History {
  const outings = lines.map((_, n) => {
    const date = more.dates?.[n] ?? new Date(Date.UTC(2026, 0, 1 + 3 * n)).toISOString().slice(0, 10);
    return { record_id: `outing ${n}`, recorded_at: `${date}T09:00:00Z`, body: {
      horse_id: "horse", field_id: null, date, activity: "cross_country_school" as const, going: more.going?.[n] ?? null, rider_confidence: null,
      minutes_in_saddle: null, from_memory: more.from_memory ?? false, closed: true, accompanied: null, notes: null,
    } };
  });
  const attempts = lines.flatMap((line, n) => line.split(" ").filter(Boolean).map((word, place) => ({
    record_id: `attempt ${n} ${place}`, recorded_at: new Date(Date.parse(outings[n]!.recorded_at) + 60_000 * place).toISOString(), body: attempt(word, `outing ${n}`),
  })));
  return { outings, attempts, fences: new Map(Object.entries(FENCES)) };
}

function attempt(word: string, outing_id: string): Attempt {
  const rein = word.includes("L") ? "left" as const : word.includes("R") ? "right" as const : null;
  const outcome = [...word.slice(1)].map((mark) => MARKS[mark]).find(Boolean) ?? "clear";
  return {
    outing_id, fence_id: word[0]!, element: null, sequence_id: null, outcome, presentation: { ...NOTHING, rein }, attitude: null,
    height_cm: null, canter_id: null, canter_offset_ms: null, note: null,
  };
}

const AS_OF = "2026-06-30";
const look = (lines: string[], more = {}): Found => findPatterns(history(lines, more), AS_OF);
const said = (found: Found): string[] => found.patterns.map(({ aspect, side }) => `${aspect} ${side}`);
const looked = (found: Found, aspect: string): string | undefined => found.looked.find((each) => each.aspect === aspect)?.looked;

// half the fences on each rein; every stop on the right, at other fences and on other days
const RIGHT = ["lR! pL wR bL", "lL pR! wL bR", "lR pL wR! bL", "lL pR! wL bR", "lR! pL wR bL", "lL pR wL bR!", "lR pL wR! bL", "lL pR! wL bR", "lR! pL wR bL", "lL pR wL bR!"];

describe("the exact test", () => {
  const vectors = JSON.parse(readFileSync(new URL("../../fixtures/contract/exact_test.json", import.meta.url), "utf8"));
  it("has its vectors", () => assert.ok(vectors.length >= 50));
  for (const { why, input, expected } of vectors) {
    it(why, () => {
      const found = byChance(input);
      for (const key of ["p", "least_p", "expected"] as const) {
        assert.ok(Math.abs(found[key] - expected[key]) <= 1e-9 * Math.max(1e-3, expected[key]), `${key}: ${found[key]}, scipy ${expected[key]}`);
      }
    });
  }

  it("shares its level out over the sides that could have counted (Tarone 1990)", () => {
    assert.equal(sharedLevel([], 0.05), 0.05);
    assert.equal(sharedLevel([0.2, 0.5], 0.05), 0.05, "none could: nothing to share");
    assert.equal(sharedLevel([0.001, 0.2, 0.5], 0.05), 0.05, "one could");
    assert.equal(sharedLevel([0.001, 0.002, 0.003], 0.05), 0.05 / 3);
    assert.equal(sharedLevel([0.001, 0.001, 0.03], 0.05), 0.025, "the third never could once two share");
  });
});

describe("a meeting", () => {
  const metOf = (lines: string[], id: string, side: string, more = {}) => {
    const all = meetings(history(lines, more));
    const aspect = ASPECTS.find((each) => each.id === id)!;
    const { units } = sideOf(aspect, side, knownOf(aspect, all), all.length);
    return { on: counts(units, true), off: counts(units, false) };
  };

  it("counts a fence once a day on each side, as it was first met there", () => {
    assert.deepEqual(metOf(["lR lR! lL lR", "lR"], "rein", "right"), { on: { met: 2, troubles: 0 }, off: { met: 0, troubles: 0 } });
    assert.deepEqual(metOf(["lR lL lR lL!"], "rein", "right"), { on: { met: 1, troubles: 0 }, off: { met: 1, troubles: 0 } });
    assert.deepEqual(metOf(["lR lR!"], "rein", "right"), { on: { met: 1, troubles: 0 }, off: { met: 0, troubles: 0 } });
  });

  it("counts no try after trouble at the fence, on either side: it would make the other rein look good", () => {
    assert.deepEqual(metOf(["lR! lL pL", "lL lR!"], "rein", "right"), { on: { met: 2, troubles: 2 }, off: { met: 2, troubles: 0 } });
    assert.deepEqual(metOf(["l! lL pL"], "rein", "left"), { on: { met: 1, troubles: 0 }, off: { met: 0, troubles: 0 } });
  });

  it("is trouble when it is a stop, a run-out, a circle or a fall, and not a pole or a flag", () => {
    const marks = ["l!", "l>", "lo", "lF", "lH", "lx", "lk", "l"].map((word) => metOf([word], "profile", "log").on.troubles);
    assert.deepEqual(marks, [1, 1, 1, 1, 1, 0, 0, 0]);
  });

  it("leaves out what nobody said", () => {
    assert.deepEqual(metOf(["lR l pL p"], "rein", "right"), { on: { met: 1, troubles: 0 }, off: { met: 1, troubles: 0 } });
  });

  it("knows the first fence, the one after trouble and the last third, repeats belonging to their fence", () => {
    const standings = meetings(history(["l! l p w b> t d r"])).map(({ attempt: { fence_id }, standing }) => [fence_id, standing!.first, standing!.after_trouble, standing!.late]);
    assert.deepEqual(standings, [
      ["l", true, false, false], ["l", true, false, false], ["p", false, true, false], ["w", false, false, false],
      ["b", false, false, false], ["t", false, true, false], ["d", false, false, true], ["r", false, false, true],
    ]);
    assert.equal(meetings(history(["l p w b t"]))[4]!.standing!.late, null, "five fences have no last third");
    assert.equal(meetings(history(["l p w"], { from_memory: true }))[0]!.standing, null, "the order typed is not the order ridden");
  });

  it("of an element is of the element's kind, and of a combination", () => {
    const coffin = { ...fence("coffin"), elements: [{ ...fence("rail"), letter: "A" as const, distance_to_next_m: null }, { ...fence("ditch"), letter: "B" as const, distance_to_next_m: null }] };
    const once = history(["k"]);
    const elements = ["A", "B", null, "F"].map((element) => meetings({
      ...once, fences: new Map([["k", coffin as Fence]]), attempts: once.attempts.map((each) => ({ ...each, body: { ...each.body, element: element as "A" } })),
    })[0]!);
    assert.deepEqual(elements.map(({ profile, asks }) => [profile, asks]), [
      ["rail", ["fixed", "airy_rail", "combination"]], ["ditch", ["ditch", "combination"]], ["coffin", ["fixed", "ditch"]], [null, null],
    ]);
  });

  it("counts whole outings where the going is asked about", () => {
    const going: Going[] = ["soft", "heavy", "good", "good_to_firm", "firm"];
    assert.deepEqual(metOf(["l! p!", "l p", "l! p", "l p", "l p"], "going", "soft", { going }), { on: { met: 2, troubles: 1 }, off: { met: 3, troubles: 1 } });
  });
});

describe("what is said", () => {
  it("names the rein, with its counts and the attempts behind it", () => {
    const found = look(RIGHT);
    assert.deepEqual(said(found), ["rein right"]);
    const [pattern] = found.patterns;
    assert.deepEqual([pattern!.on, pattern!.off, pattern!.chance.expected], [{ met: 20, troubles: 10 }, { met: 20, troubles: 0 }, 5]);
    assert.ok(Math.abs(pattern!.chance.p - 0.5 ** 10) < 1e-12, "one stop a day, half the fences on the right: a coin tossed ten times");
    assert.deepEqual(pattern!.behind.slice(0, 2).map(({ attempt_id }) => attempt_id), ["attempt 9 3", "attempt 8 0"]);
    assert.equal(looked(found, "rein"), "looked");
  });

  it("is silent before there is enough", () => {
    assert.deepEqual(said(look([])), []);
    assert.deepEqual([said(look(RIGHT.slice(0, 3))), looked(look(RIGHT.slice(0, 3)), "rein")], [[], "too_little"], "three of three: chance does that once in eight");
    const first = RIGHT.findIndex((_, n) => said(look(RIGHT.slice(0, n + 1))).length > 0) + 1;
    assert.equal(first, 8, "seven in a row are not enough for everything that is looked at, eight are");
  });

  it("is silent where the stops follow the fences", () => {
    const even = RIGHT.map((line, n) => (n % 2 ? line : line.replaceAll("R", "?").replaceAll("L", "R").replaceAll("?", "L")));
    const found = look(even);
    assert.deepEqual(said(found), []);
    assert.equal(looked(found, "rein"), "looked");
  });

  it("takes a bad day for a bad day", () => {
    const bad = ["lR! pR! wR! bR! tR! dR!", ...Array.from({ length: 8 }, () => "lL pL wL bL tL dL")];
    assert.deepEqual(said(look(bad)), [], "six stops on the right rein, all on the one day ridden on it");
  });

  it("takes one bad fence for that fence", () => {
    const ditch = Array.from({ length: 12 }, () => "lR pL dR! bL wR tL rR cL");
    assert.ok(said(look(ditch)).includes("fence d"));
    assert.deepEqual(said(look(ditch)).filter((each) => each !== "fence d"), []);
  });

  it("names a kind where two fences of it are behind it, and says what is shared", () => {
    const two = history(Array.from({ length: 12 }, (_, n) => (n % 2 ? "lR pL dR! bL wR tL rR cL" : "lL pR eR! bR wL tL rL cR")));
    const found = findPatterns({ ...two, fences: new Map([...two.fences, ["e", fence("ditch", "another")]]) }, AS_OF);
    assert.deepEqual(said(found), ["ask ditch", "rein right"]);
    assert.deepEqual(found.patterns[0]!.shared, [{ aspect: "rein", side: "right", troubles: 12 }]);
  });

  it("forgets what is over a year old, and what is still to come", () => {
    const year = (n: number): string => `2024-0${1 + (n % 9)}-1${n % 9}`;
    assert.deepEqual(look(RIGHT, { dates: RIGHT.map((_, n) => year(n)) }).meetings, 0);
    assert.equal(look(["lR"], { dates: ["2026-07-01"] }).meetings, 0);
    assert.equal(look(["lR"], { dates: [AS_OF] }).meetings, 1);
  });

  it("says nothing of reins that are noted only when the horse stops", () => {
    const lines = RIGHT.map((line) => line.split(" ").map((word) => (word.includes("!") ? word : word[0])).join(" ") + " t d c");
    assert.equal(looked(look(lines), "rein"), "unsaid");
  });

  it("says since when it has gone well again", () => {
    const found = look([...RIGHT, "lR pL wR bL"]);
    assert.equal(found.patterns[0]!.clear_since, 2);
  });

  it("hears of going by whole outings", () => {
    const soft = Array.from({ length: 16 }, (_, n) => (n % 2 ? `l! ${n % 4 === 1 ? "p!" : "p"} w b` : "l p w b"));
    const going = soft.map((_, n) => (n % 2 ? "soft" as const : "good" as const));
    const [pattern] = look(soft.map((line, n) => (n % 4 === 1 ? line.replace("l!", "l") : line)), { going }).patterns;
    assert.deepEqual([pattern?.aspect, pattern?.side, pattern?.on, pattern?.off], ["going", "soft", { met: 8, troubles: 8 }, { met: 8, troubles: 0 }]);
  });

  it("does not depend on the order in which records arrive", () => {
    const { outings, attempts, fences } = history(RIGHT);
    const other = findPatterns({ outings: [...outings].reverse(), attempts: [...attempts].reverse(), fences }, AS_OF);
    assert.deepEqual(other.patterns.map(({ chance, behind }) => [chance, behind.length]), look(RIGHT).patterns.map(({ chance, behind }) => [chance, behind.length]));
  });
});

describe("words and picture", () => {
  const pattern = look(RIGHT).patterns[0]!;

  it("say what was seen with its counts", () => {
    assert.deepEqual(seenPhrase(pattern, "on the right rein", "10 stops"), {
      key: "pattern.seen", values: { on: 10, troubles: "10 stops", where: "on the right rein", share: 50 },
    });
    assert.equal(wherePhrase({ aspect: "late", side: "late" }, "").key, "pattern.where_late");
    assert.deepEqual(wherePhrase({ aspect: "ask", side: "ditch" }, "Ditch"), { key: "pattern.where_ask", values: { what: "Ditch" } });
    assert.deepEqual([0.096, 1 / 1024, 0.0037].map((p) => chancePhrase(p).values.n), [10, 1000, 270]);
    assert.equal(chancePhrase(1e-9).key, "pattern.chance_rare");
    assert.deepEqual([percent({ met: 0, troubles: 0 }), percent({ met: 42, troubles: 5 })], [0, 12]);
  });

  it("are there for every side of every aspect", () => {
    const keys = ASPECTS.flatMap((aspect) => (aspect.sides ?? ["any"]).map((side) => wherePhrase({ aspect: aspect.id, side }, "").key));
    const more = ASPECT_IDS.flatMap((id) => [`pattern.aspect_${id}`, `pattern.not_${id}`]);
    assert.deepEqual([...keys, ...more].filter((key) => !(key in words)), []);
  });

  it("draw both bars on one scale, the longer within the drawing", () => {
    const { on, off } = picture({ met: 20, troubles: 10 }, { met: 20, troubles: 1 });
    assert.ok(Math.abs(on.width / off.width - 10) < 1e-9);
    assert.ok(on.text_x < WIDTH - 40);
    assert.equal(picture({ met: 10, troubles: 0 }, { met: 10, troubles: 0 }).on.width, 0);
  });
});

/** How often something was ever said in these seasons, looked at after each outing. */
function everSaid(seeds: number, truth: Parameters<typeof season>[1], wanted: (pattern: { aspect: string; side: string }) => boolean): number {
  return Array.from({ length: seeds }, (_, n) => season(n + 1, truth)).filter((one) => one.days.some((day) => findPatterns(upTo(one, day), day).patterns.some(wanted))).length;
}

describe("made-up seasons of forty outings, looked at after each", () => {
  it("without any pattern are told one in about one of ten", () => {
    const told = everSaid(50, { days: 0.8 }, () => true);
    assert.ok(told <= 8, `${told} of 50`);
  });

  it("with a bad rein are told so more often than not being told anything else", () => {
    const odds = ({ attempt: { presentation } }: { attempt: Attempt }) => (presentation.rein === "right" ? 6 : 1);
    const right = ({ aspect, side }: { aspect: string; side: string }) => aspect === "rein" && side === "right";
    const told = everSaid(20, { stop: 0.04, odds }, right);
    assert.ok(told >= 10, `${told} of 20`);
    assert.ok(everSaid(20, { stop: 0.04, odds }, (pattern) => !right(pattern)) <= 4);
  });

  it("are looked at quickly, whatever their length", () => {
    const long = season(7, { outings: 45, stop: 0.1 });
    const before = performance.now();
    findPatterns(long.history, long.days.at(-1)!);
    assert.ok(performance.now() - before < 250, "a phone several times slower still answers at once");
  });

  it("leave the rule as docs/patterns.md states it", () => {
    const { window_days, least_met, least_outings, least_troubles, least_fences, least_days, least_said, alpha, share } = RULE;
    assert.deepEqual([window_days, least_met, least_outings, least_troubles, least_fences, least_days, least_said], [365, 8, 4, 3, 2, 2, 0.5]);
    assert.ok(Math.abs(Object.values(share).reduce((sum, each) => sum + each, 0) - 1) < 1e-12);
    assert.equal(alpha, 0.05);
  });
});
