// The texts: each one used, each one there, the American ones with the gaps of the British.

import assert from "node:assert/strict";
import { readdirSync, readFileSync } from "node:fs";
import { test } from "node:test";
import { fileURLToPath } from "node:url";

import { ACTIVITIES, ASKS, ATTITUDES, COMPANIES, DECISIONS, EVENT_STATUSES, GOING, GROUNDS, KINDS, LANDINGS, LIMITS, MEASURED_BY, OUTCOMES, PACES, PHASES, PROFILES, REINS, ROLES, WAYS } from "../../webclient/src/entries/bodies.ts";
import { american, british } from "../../webclient/src/words/british.ts";
import { decimal, grouped, setDecimalMark } from "../../webclient/src/words/decimal.ts";
import { speak, type Words } from "../../webclient/src/words/speak.ts";

const SRC = fileURLToPath(new URL("../../webclient/src/", import.meta.url));
const keys = Object.keys(british);
const texts: Record<string, Words> = british;

const files = readdirSync(SRC, { recursive: true, encoding: "utf8" }).filter((name) => /\.tsx?$/.test(name));
const source = files.map((name) => readFileSync(SRC + name, "utf8")).join("\n");
const quoted = new Set([...source.matchAll(/"([a-z_]+(?:\.[\w.-]+)+)"/g)].map((found) => found[1]!));
// `outcome.${outcome}` stands for every key that begins so; `${kind}.${word}` would stand for anything
const patterns = [...source.matchAll(/`([a-z_]+\.[^`\s]*\$\{[^`]+)`/g)].map((found) => patternOf(found[1]!));

function patternOf(template: string): RegExp {
  const parts = template.replace(/\$\{[^}]*\}/g, "\0").split("\0");
  return new RegExp(`^${parts.map((part) => part.replace(/[.*+?^${}()|[\]\\]/g, "\\$&")).join("[\\w*-]+")}$`);
}

// names of fields and words of the vocabularies, which describe/values.ts looks up by what a record holds
const VOCABULARIES = { activity: ACTIVITIES, going: GOING, profile: PROFILES, ask: ASKS, rein: REINS, ground: GROUNDS, way: WAYS, landing: LANDINGS, company: COMPANIES, gait: PACES, outcome: OUTCOMES, attitude: ATTITUDES, measured_by: MEASURED_BY, event_status: EVENT_STATUSES, decision: DECISIONS, phase: PHASES, role: ROLES, kind: Object.keys(KINDS) };
const lookedUp = new Set(Object.entries(VOCABULARIES).flatMap(([name, words]) => words.map((word) => `${name}.${word}`)));

const isUsed = (key: string) => lookedUp.has(key) || key.startsWith("body.") || quoted.has(key) || patterns.some((pattern) => pattern.test(key));

test("every text is used somewhere", () => assert.deepEqual(keys.filter((key) => !isUsed(key)), []));

test("every word of every vocabulary, and every field of every body, has a text", () => {
  assert.deepEqual([...lookedUp].filter((key) => !(key in british)), []);
  const fields = Object.entries(LIMITS).flatMap(([, limits]) => Object.keys(limits).map((path) => path.split(".").at(-1)!));
  assert.deepEqual(fields.filter((field) => !(`body.${field}` in british)), []);
});

test("every key named in the code has a text", () => {
  const prefixes = new Set(keys.map((key) => key.split(".")[0]!));
  const named = [...quoted].filter((key) => prefixes.has(key.split(".")[0]!) && /^[a-z]+\.[a-z]/.test(key));
  assert.deepEqual(named.filter((key) => !(key in british)), []);
});

test("the American texts replace British ones and leave the same gaps", () => {
  const gaps = (words: Words) => [...JSON.stringify(words).matchAll(/\{\w+\}/g)].map(([gap]) => gap).sort();
  for (const [key, words] of Object.entries(american as Record<string, Words>)) {
    assert.ok(key in british, `${key} has no British text`);
    assert.deepEqual(gaps(words), gaps(texts[key]!), key);
  }
});

test("what is spelled otherwise in America has its American text", () => {
  const british_spelling = /metre|avourite|colour|rganis|recognis|per cent|towards/i;
  const missing = keys.filter((key) => british_spelling.test(JSON.stringify(texts[key]).replace(/\{\w+\}/g, "")) && !(key in american));
  assert.deepEqual(missing, []);
});

test("no text promises safety", () => {
  const promising = keys.filter((key) => /\bsafe(ly|ty)?\b/i.test(JSON.stringify(texts[key])));
  assert.deepEqual(promising, []);
});

test("gaps are filled, plural forms chosen, unknown gaps left standing", () => {
  assert.equal(speak("{n} of {m}", { n: 3, m: 5 }, "en-GB"), "3 of 5");
  const words = { one: "{n} attempt", other: "{n} attempts" };
  assert.deepEqual([0, 1, 2].map((n) => speak(words, { n }, "en-GB")), ["0 attempts", "1 attempt", "2 attempts"]);
  assert.equal(speak("to {whom}", {}, "en-GB"), "to {whom}");
});

// group marks as CLDR 45 has them, by the browser's own Intl
test("long numbers are read in thousands, by the marks of the language; what is typed back is not", () => {
  const shown = () => [speak("{n} points", { n: 12345 }, "en-GB"), grouped("1234567.5 m"), grouped(-20000), grouped(2026), grouped("9999.5 m"), decimal(12345.5)];
  try {
    for (const language of ["en-GB", "en-US"]) {
      setDecimalMark(language);
      assert.deepEqual(shown(), ["12,345 points", "1,234,567.5 m", "-20,000", "2026", "9999.5 m", "12345.5"]);
    }
    setDecimalMark("de");
    assert.deepEqual(shown(), ["12.345 points", "1.234.567,5 m", "-20.000", "2026", "9999,5 m", "12345,5"]);
    assert.equal(speak("{name}", { name: "12345" }, "de"), "12345", "what somebody wrote stays");
  } finally {
    setDecimalMark("en-GB");
  }
});
