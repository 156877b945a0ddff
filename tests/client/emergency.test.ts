// The emergency card: kept in a place of its own, gone when deleted, and a number to call found in a line.

import assert from "node:assert/strict";
import { test } from "node:test";

import { card, keepCard, numberIn, readCard } from "../../webclient/src/screens/emergency/card.ts";
import "./storage.ts";

test("the card is read back after the page is gone, and not after it was deleted", async () => {
  await keepCard({ name: "Wren", allergies: "Penicillin" });
  card.value = undefined;
  await readCard();
  assert.deepEqual(card.value, { name: "Wren", allergies: "Penicillin" });
  await keepCard(null);
  card.value = undefined;
  await readCard();
  assert.equal(card.value, null);
});

test("typed faster than the disk writes, the newest is what is kept", async () => {
  const typing = ["W", "Wr", "Wre", "Wren"].map((name) => keepCard({ name }));
  await Promise.all(typing);
  card.value = undefined;
  await readCard();
  assert.deepEqual(card.value, { name: "Wren" });
  await keepCard(null);
});

test("no account's database is named like it", async () => {
  const names = (await indexedDB.databases()).map(({ name }) => name!);
  assert.deepEqual(names.filter((name) => name.includes("emergency") && name.startsWith("fieldtally-")), []);
});

test("the number in a line is found, whatever stands around it", () => {
  assert.deepEqual(
    ["Idris, +44 (0)1632 960-123", "01632 960123 (yard)", "999", "Dr. Vale", "Room 12, 030/1234567", "112 or 01632 960 999"].map(numberIn),
    ["+4401632960123", "01632960123", "999", null, "0301234567", "01632960999"],
  );
});
