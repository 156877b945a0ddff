// The German texts: one for every British one, with the same gaps and forms, and in German.

import assert from "node:assert/strict";
import { readdirSync, readFileSync } from "node:fs";
import { test } from "node:test";
import { fileURLToPath } from "node:url";

import { british } from "../../webclient/src/words/british.ts";
import { german } from "../../webclient/src/words/german.ts";
import { speak, type Words } from "../../webclient/src/words/speak.ts";

const FOLDER = fileURLToPath(new URL("../../webclient/src/words/", import.meta.url));
const ours: Record<string, Words> = british;
const theirs: Record<string, Words> = german as Record<string, Words>;
// told.json puts into German what the server says in English, so it has no British counterpart; see below
const OF_THE_SERVER = /^(asked|told|said|like|fault|sourced)\./;
const own = Object.keys(theirs).filter((key) => !OF_THE_SERVER.test(key));
const filesOf = (language: string) => readdirSync(FOLDER + language).filter((name) => name.endsWith(".json")).sort();
const textsOf = (words: Words): string[] => (typeof words === "string" ? [words] : Object.values(words));
const gapsOf = (words: Words) => [...new Set(textsOf(words).flatMap((text) => text.match(/\{\w+\}/g) ?? []))].sort();

test("every British text has its German one, and no German text stands alone", () => {
  assert.deepEqual(Object.keys(ours).filter((key) => !(key in theirs)), []);
  assert.deepEqual(own.filter((key) => !(key in ours)), []);
});

test("every file of either language is gathered", () => {
  for (const [language, gathered] of [["en-GB", ours], ["de", theirs]] as const) {
    for (const file of filesOf(language)) {
      const texts = Object.keys(JSON.parse(readFileSync(`${FOLDER}${language}/${file}`, "utf8")) as object);
      assert.deepEqual(texts.filter((key) => !(key in gathered)), [], `${language}/${file}`);
    }
  }
});

test("the German texts leave the gaps of the British", () => {
  for (const key of own) assert.deepEqual(gapsOf(theirs[key]!), gapsOf(ours[key]!), key);
});

// CLDR 45, plural rules of German for whole numbers: one for 1, other for the rest
test("where English has plural forms German has all of its own", () => {
  assert.deepEqual(new Intl.PluralRules("de").resolvedOptions().pluralCategories.toSorted(), ["one", "other"]);
  const formsOf = (words: Words) => (typeof words === "string" ? [] : Object.keys(words).sort());
  for (const key of own) assert.deepEqual(formsOf(theirs[key]!), formsOf(ours[key]!), key);
  assert.deepEqual([0, 1, 2].map((n) => speak(theirs["today.attempts"]!, { n }, "de")), ["0 Versuche bisher", "1 Versuch bisher", "2 Versuche bisher"]);
});

// words that stand in nearly every English sentence and in no German one
const ENGLISH = /(?<!\p{L})(the|and|of|is|are|with|for|not|your|you|it|this|that|on|to|by|from|has|have|at|as|be|or|if)(?!\p{L})/iu;
const NAMES = /\bUSCTA Book of Eventing|BE Life, BE100 to Novice|Equine Veterinary Journal/g;

test("no German text is English", () => {
  const english = Object.entries(theirs).filter(([, words]) => textsOf(words).some((text) => ENGLISH.test(text.replace(NAMES, "").replace(/\{\w+\}/g, ""))));
  assert.deepEqual(english.map(([key]) => key), []);
});

// the same in both languages: numbers and gaps alone, names, units, and words that German took over
const ALIKE = new Set(["Fieldtally", "Name", "Start", "START", "Text", "Version", "Status", "Element", "Element {letter}", "Oxer", "Countdown", "Palisade", "Coffin", "Bullfinch", "Trakehner", "Coach", "Coach {name}", "Coach {name}, {moment}", "Minute", "Normal", "Export", "Video", "Code", "N", "GPX", "CSV", "English (UK)", "English (US)", "Deutsch", "{n} km"]);
const letters = (text: string) => text.replace(/\{\w+\}|\b(m\/min|min|cm|km|m|in|s|ft|yd)\b/g, "").replace(/[^\p{L}]/gu, "");

test("a text that is the same in both languages is one that may be", () => {
  const same = Object.keys(theirs).filter((key) => JSON.stringify(theirs[key]) === JSON.stringify(ours[key]) && textsOf(theirs[key]!).some((text) => letters(text) !== "" && !ALIKE.has(text)));
  assert.deepEqual(same, []);
});

test("no German text promises safety", () => {
  const promising = Object.keys(theirs).filter((key) => /\b(sicher(e[mnrs]?|heit)?|gefahrlos|ungefährlich)\b/i.test(JSON.stringify(theirs[key])));
  assert.deepEqual(promising, []);
});

test("German texts use its own quotation marks and decimal comma", () => {
  const foreign = Object.keys(theirs).filter((key) => textsOf(theirs[key]!).some((text) => /[‘”]|“(?=\p{L}[^„]*”)/u.test(text) || (text.match(/„/g) ?? []).length !== (text.match(/“/g) ?? []).length || /\d\.\d(?!\d*\.)/.test(text)));
  assert.deepEqual(foreign, []);
});

test("a person is addressed as du throughout", () => {
  assert.deepEqual(Object.keys(theirs).filter((key) => textsOf(theirs[key]!).some((text) => /(?<!\p{L})Ihnen(?!\p{L})|(?<=[\p{L},] )Sie (können|haben|sind|müssen|wollen)(?!\p{L})/u.test(text))), []);
});

// --- what the server says ---

const SERVER = fileURLToPath(new URL("../../server/fieldtally/", import.meta.url));
const DOCS = fileURLToPath(new URL("../../docs/", import.meta.url));
const read = (folder: string, end: string) => readdirSync(folder).filter((name) => name.endsWith(end)).map((name) => readFileSync(folder + name, "utf8")).join("\n");
const python = read(`${SERVER}readiness/`, ".py");
const named = (beginning: string) => Object.keys(theirs).filter((key) => key.startsWith(beginning)).map((key) => key.slice(beginning.length));

test("every requirement has its German name, and none other has one", () => {
  const asked = [...read(`${SERVER}readiness/bars/`, ".toml").matchAll(/^id = "(\w+)"$/gm)].map(([, id]) => id!);
  assert.ok(asked.length > 30, "the bars list their requirements");
  assert.deepEqual([...new Set(asked)].filter((id) => !(`asked.${id}` in theirs)), []);
  assert.deepEqual(named("asked.").filter((id) => !asked.includes(id)), []);
});

// entry rules, `gate_…` and `rule_…`, quote a rulebook and stay in its language
test("every code of a reason has German words", () => {
  const codes = [...python.matchAll(/Reason\(\s*"(\w+)"/g)].map(([, code]) => code!);
  assert.ok(codes.length > 30, "the weighers give reasons");
  const said = new Set(named("told.").map((key) => key.split(".")[0]));
  assert.deepEqual([...new Set(codes)].filter((code) => !said.has(code)), []);
});

test("every sentence that is looked up whole is one the server says", () => {
  const plain = python.replace(/"\s*\n\s*f?"/g, "");
  assert.deepEqual(named("said.").filter((sentence) => !plain.includes(sentence)), []);
});

test("every fault that has German words is in the lists of errors", () => {
  const listed = readFileSync(`${DOCS}errors.md`, "utf8") + readFileSync(`${DOCS}protocol.md`, "utf8");
  assert.deepEqual(named("fault.").filter((code) => !listed.includes(`\`${code}\``)), []);
});

test("parts that would count nothing are left out", () => {
  const words = theirs["told.more_clear.clear.fields.outings"]!;
  assert.equal(speak(words, { clear: 3, outings: 2, fields: 0 }, "de"), "Noch 3 × fehlerfrei. Weitere Einheiten: 2.");
  assert.equal(speak(words, { clear: 0, outings: 0, fields: 1 }, "de"), "Weitere Plätze: 1.");
  assert.equal(speak("{n} left", { n: 0 }, "en-GB"), "0 left");
});
