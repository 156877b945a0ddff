// Tables out and in: RFC 4180, nothing that runs as a formula, and every text back exactly as it was.

import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { test } from "node:test";

import { harmless, line, PLAIN, readTable, spreadsheetManner, tableText, unharmed } from "../../webclient/src/copies/csv.ts";
import { seeded } from "./fakePhone.ts";

const { cells, lines } = JSON.parse(readFileSync(new URL("../../fixtures/contract/csv.json", import.meta.url), "utf8")) as {
  cells: { text: string; cell: string }[];
  lines: { values: (string | number | boolean | null)[]; line: string }[];
};

test("cells are made harmless, and read back, as the server does it", () => {
  for (const { text, cell } of cells) assert.deepEqual([harmless(text), unharmed(cell)], [cell, text]);
});

test("lines are written as the server writes them", () => {
  for (const { values, line: expected } of lines) assert.equal(line(values), expected);
});

test("whatever is written is read back exactly, plain and for spreadsheets of three languages", () => {
  const random = seeded(7);
  const signs = [..."=+-@\t\r\n'\",;.: aZéŠ1０＝😀"];
  const text = () => Array.from({ length: 1 + Math.floor(random() * 6) }, () => signs[Math.floor(random() * signs.length)]).join("");
  const rows = Array.from({ length: 400 }, () => ["x", text(), text(), text()]);
  for (const manner of [PLAIN, ...["en-GB", "de", "fr"].map(spreadsheetManner)]) {
    assert.deepEqual(readTable(tableText([["a", "b", "c", "d"], ...rows], manner)), [["a", "b", "c", "d"], ...rows]);
  }
});

test("numbers stay numbers: a point for programs, the language's sign for its spreadsheets", () => {
  assert.equal(line([1.5, -0.25, 412]), "1.5,-0.25,412\r\n");
  assert.equal(line([1.5, -0.25, "Zoë; x"], spreadsheetManner("de")), '1,5;-0,25;"Zoë; x"\r\n');
  assert.equal(tableText([["a"]], spreadsheetManner("en-GB")), "\ufeffa\r\n");
  assert.equal(tableText([["a"]], PLAIN), "a\r\n");
});

test("tables are read as people send them", () => {
  assert.deepEqual(readTable('\ufeffDay;Horse\r\n3.4.2025;"Zoë, ""x""\n2 lines"\r\n\r\n'), [["Day", "Horse"], ["3.4.2025", 'Zoë, "x"\n2 lines']]);
  assert.deepEqual(readTable("sep=;\na;b\n1;2"), [["a", "b"], ["1", "2"]]);
  assert.deepEqual(readTable("a\tb\n1\t"), [["a", "b"], ["1", ""]]);
  assert.deepEqual(readTable("a,b\r1,2\r"), [["a", "b"], ["1", "2"]]);
  assert.equal(readTable('a,b\n"never closed,1\n'), null);
});
