// Tables of the past brought in: columns matched, cells read, rows turned into records that are made once.

import assert from "node:assert/strict";
import { test } from "node:test";

import { columnsOf, TABLE_KINDS } from "../../webclient/src/copies/columns.ts";
import { PLAIN, readTable, spreadsheetManner, tableText } from "../../webclient/src/copies/csv.ts";
import { tableOf } from "../../webclient/src/copies/tables.ts";
import { type Asked, bring } from "../../webclient/src/imports/bring.ts";
import { columnNamed, kindOfTable } from "../../webclient/src/imports/columnNames.ts";
import { orderOfDays, readDay } from "../../webclient/src/imports/readDay.ts";
import { rowsOf, sheetOf } from "../../webclient/src/imports/sheet.ts";
import { takeIn } from "../../webclient/src/imports/takeIn.ts";
import type { Place } from "../../webclient/src/store/place.ts";
import { findRecords } from "../../webclient/src/store/read.ts";
import { LOGBOOK, newPlace } from "./storage.ts";

const TODAY = "2026-06-01";
const GERMAN: Record<string, string> = { run_out: "Vorbeilaufen", true: "Ja" };
const reading = (dayFirst: boolean | null = true) => ({ today: TODAY, dayFirst, levels: new Map([["novice", "novice"], ["anfänger", "novice"]]), shown: (_: string, word: string) => GERMAN[word] ?? word });

function read(text: string, dayFirst: boolean | null = true) {
  const table = readTable(text)!;
  const sheet = sheetOf(table)!;
  return { sheet, rows: rowsOf(sheet, table, reading(sheet.dayFirst ?? dayFirst)) };
}

async function bringInto(place: Place, text: string, asked: Asked = { make: true, profile: "log" }) {
  const { sheet, rows } = read(text);
  const known = (await Promise.all(["horse", "field", "fence"].map((kind) => findRecords(place, kind, {})))).flat();
  const brought = await bring(sheet.kind, rows, LOGBOOK, known, asked, "Brought in.");
  return { brought, rows, added: await takeIn(place, brought.entries) };
}

const ATTEMPTS = "date,horse,field,fence,outcome,rein,height_cm,note\n2025-04-03,Finch,Low Moor,7,clear,left,90,\n2025-04-03,Finch,Low Moor,7,run-out,right,,=odd\n2025-04-04,Finch,Low Moor,Ditch,Refusal,,,\n";

test("headings are known in English and German, in any order and spelling", () => {
  assert.deepEqual(["Datum", "PFERD", "Höhe (cm)", "height cm", "Hindernis ", "Ergebnis"].map((heading) => columnNamed(heading, columnsOf("attempt"))), ["date", "horse", "height_cm", "height_cm", "fence", "outcome"]);
  assert.deepEqual(TABLE_KINDS.filter((kind) => kind !== "timed_canter").map((kind) => kindOfTable(columnsOf(kind))), ["attempt", "flatwork_test", "jumping_round", "event_result"]);
  assert.equal(kindOfTable(["Name", "Preis"]), null);
});

test("a German table with semicolons and decimal commas is read", () => {
  const { sheet, rows } = read('\ufeffPferd;Datum;Aufgabe;Prozent;Farbe\r\n"Zoë; die Große";3.4.2025;E1;"65,25";grau\r\n');
  assert.deepEqual([sheet.kind, sheet.unused], ["flatwork_test", ["Farbe"]]);
  assert.deepEqual([rows[0]!.values, rows[0]!.troubles], [{ horse: "Zoë; die Große", date: "2025-04-03", test: "E1", percent: 65.25 }, []]);
});

test("days in every usual way; two slashes are asked about only when nothing in the table tells", () => {
  assert.deepEqual(["2025-04-03", "2025-4-3", "3.4.2025", "03.04.25"].map((day) => readDay(day, null, TODAY)), Array(4).fill("2025-04-03"));
  assert.deepEqual([readDay("3/4/2025", true, TODAY), readDay("3/4/2025", false, TODAY)], ["2025-04-03", "2025-03-04"]);
  assert.deepEqual(["3/4/2025", "31.2.2025", "soon", "1.1.2030", "1.1.1950"].map((day) => (readDay(day, null, TODAY) as { key: string }).key), ["date_order", "date", "date", "future", "date"]);
  assert.deepEqual([orderOfDays(["3/4/2025"]), orderOfDays(["3/4/2025", "25/4/2025"]), orderOfDays(["3/4/2025", "4/25/2025"]), orderOfDays(["2025-04-03"])], [null, true, false, true]);
});

test("each cell that cannot be used is named with its column and what would do", () => {
  const { rows } = read("date,horse,fence,outcome,height_cm\n2025-04-03,,7,stopp,900\n");
  const [row] = rows;
  assert.deepEqual(row!.troubles.map(({ column, key }) => [column, key]), [["outcome", "word"], ["height_cm", "number"], ["horse", "missing"]]);
  assert.deepEqual([row!.troubles[1]!.values.least, row!.troubles[1]!.values.most], [1, 250]);
  assert.match(String(row!.troubles[0]!.values.words), /clear, refusal, Vorbeilaufen/);
  assert.deepEqual(read("date,horse,event,level,status\n2025-04-03,Finch,Home,Unknown,finished\n").rows[0]!.troubles.map(({ key }) => key), ["level"]);
  assert.deepEqual(read("date,horse,test\n2025-04-03,Finch,E1\n").rows[0]!.troubles.map(({ key }) => key), ["percent"]);
});

test("nothing is made before it was allowed; the names are listed", async () => {
  const place = await newPlace();
  const { brought, added } = await bringInto(place, ATTEMPTS, { make: false, profile: null });
  assert.deepEqual([added, brought.missing, brought.unbuilt], [0, { horse: ["Finch"], field: ["Low Moor"], fence: ["7", "Ditch"] }, true]);
});

test("attempts become closed outings from memory, marked, in the table's order", async () => {
  const place = await newPlace();
  await bringInto(place, ATTEMPTS);
  const outings = await findRecords(place, "outing", {});
  assert.deepEqual(outings.map(({ body }) => [body!.date, body!.from_memory, body!.closed, body!.notes]), [["2025-04-03", true, true, "Brought in."], ["2025-04-04", true, true, "Brought in."]]);
  const attempts = await findRecords(place, "attempt", { outing_id: outings[0]!.record_id });
  assert.deepEqual(attempts.map(({ body }) => [body!.outcome, (body!.presentation as { rein: string }).rein, body!.height_cm, body!.note]), [["clear", "left", 90, null], ["run_out", "right", null, "=odd"]]);
  assert.ok(attempts[0]!.recorded_at < attempts[1]!.recorded_at);
});

test("brought in twice, whole or in parts or with rows added, it is there once; the same row twice is two attempts", async () => {
  const place = await newPlace();
  const first = await bringInto(place, ATTEMPTS);
  assert.equal((await bringInto(place, ATTEMPTS)).added, 0);
  const longer = `${ATTEMPTS}2025-04-03,Finch,Low Moor,7,clear,left,90,\n`;
  assert.equal((await bringInto(place, longer)).added, 1);
  assert.equal((await bringInto(place, longer)).added, 0);
  assert.equal((await findRecords(place, "attempt", {})).length, 4);
  const other = await newPlace(); // another phone of the same logbook makes the same entries, word for word
  const again = await bringInto(other, ATTEMPTS);
  assert.deepEqual(again.brought.entries, first.brought.entries);
});

test("without a field a fence is the one of that label, and the outing is where it stands; two such fences are no guess", async () => {
  const place = await newPlace();
  await bringInto(place, ATTEMPTS);
  const bare = "date,horse,fence,outcome\n2025-05-01,Finch,Ditch,clear\n";
  const { brought } = await bringInto(place, bare);
  const fields = await findRecords(place, "field", {});
  assert.deepEqual(brought.missing.fence, []);
  assert.equal((await findRecords(place, "outing", {})).at(-1)!.field_id, fields[0]!.record_id);
  await bringInto(place, "date,horse,field,fence,outcome\n2025-05-02,Finch,Other,Ditch,clear\n");
  assert.deepEqual((await bringInto(place, "date,horse,fence,outcome\n2025-05-03,Finch,Ditch,clear\n", { make: false, profile: null })).brought.missing.fence, ["Ditch"]);
});

test("good rows are taken while bad ones stay", async () => {
  const place = await newPlace();
  const { brought, rows } = await bringInto(place, "date,horse,height_cm,efforts\n2025-04-03,Finch,90,10\n2025-04-04,Finch,high,10\n");
  assert.deepEqual(rows.map(({ at }) => brought.idOf.has(at)), [true, false]);
  assert.equal((await findRecords(place, "jumping_round", {})).length, 1);
});

test("what is taken out comes in elsewhere with exactly the same texts", async () => {
  const place = await newPlace();
  const wild = '=HYPERLINK("http://x","y")';
  await bringInto(place, tableText([["date", "horse", "fence", "outcome", "note"], ["2025-04-03", "'+1", "-2; x", "clear", wild]], PLAIN));
  await bringInto(place, "date,horse,test,percent\n2025-04-03,'+1,E1,65.25\n");
  const records = await place.db.records.toArray();
  for (const manner of [PLAIN, spreadsheetManner("de"), spreadsheetManner("en-GB")]) {
    const [headings, row] = readTable(tableText(tableOf("attempt", records), manner))!;
    const said = Object.fromEntries(headings!.map((heading, at) => [heading, row![at]]));
    assert.deepEqual([said.horse, said.fence, said.note, said.outcome], ["'+1", "-2; x", wild, "clear"]);
    const { rows } = read(tableText(tableOf("flatwork_test", records), manner));
    assert.deepEqual([rows[0]!.troubles, rows[0]!.values.percent], [[], 65.25]);
  }
});
