// Three phones of two people write, edit, take back and sync in random order, while replies are lost, portals
// answer and the server is restored from backups. Once the weather clears all hold the same, and nothing that
// anybody wrote is missing. Seeds are fixed, so a failure can be run again.

import assert from "node:assert/strict";
import { test } from "node:test";

import { LOGBOOK, newPlace } from "./storage.ts"; // first: the store looks for IndexedDB as it is loaded

import type { Place } from "../../webclient/src/store/place.ts";
import { writeBody, writePutBack, writeTakeBack } from "../../webclient/src/store/write.ts";
import { emptyTally } from "../../webclient/src/sync/context.ts";
import { countsAgree } from "../../webclient/src/sync/cursor.ts";
import { syncLogbook } from "../../webclient/src/sync/engine.ts";
import { SyncStop } from "../../webclient/src/sync/stop.ts";
import { makeWire } from "../../webclient/src/sync/wire.ts";
import { page, PretendServer, problem } from "./pretendServer.ts";

const SCHEDULES = 40;
const STEPS = 30;

/** Numbers from 0 to 1 that the seed decides (a 32-bit linear congruential generator). */
function dice(seed: number): () => number {
  let state = seed >>> 0;
  return () => (state = (Math.imul(state, 1664525) + 1013904223) >>> 0) / 2 ** 32;
}

class Story {
  server = new PretendServer();
  phones: Place[];
  written = new Set<string>();
  later_ms = 0;
  roll: () => number;

  constructor(seed: number, phones: Place[]) {
    this.roll = dice(seed);
    this.phones = phones;
  }

  pick<T>(from: T[]): T {
    return from[Math.floor(this.roll() * from.length)]!;
  }

  async step(): Promise<void> {
    const phone = this.pick(this.phones);
    const what = this.roll();
    if (what < 0.3) await writeBody(phone, "field", { name: `field ${Math.floor(this.roll() * 1000)}` });
    else if (what < 0.6) await this.change(phone);
    else if (what < 0.95) await this.sync(phone, this.roll() < 0.4);
    else this.server.restore(Math.floor(this.roll() * (this.server.entries.length + 1)));
    for (const entry of await phone.db.entries.toArray()) this.written.add(entry.id);
  }

  async change(phone: Place): Promise<void> {
    const records = await phone.db.records.toArray();
    if (!records.length) return;
    const { record_id, body } = this.pick(records);
    const what = this.roll();
    if (body === null) await writePutBack(phone, record_id);
    else if (what < 0.3) await writeTakeBack(phone, record_id);
    else if (what < 0.65) await writeBody(phone, "field", { ...body, name: `edited ${Math.floor(this.roll() * 1000)}` } as never, record_id);
    else await writeBody(phone, "field", { ...body, notes: `note ${Math.floor(this.roll() * 1000)}` } as never, record_id);
  }

  async sync(phone: Place, stormy: boolean): Promise<void> {
    this.later_ms += 120_000; // what was put off is tried again by now
    this.server.fault = () => (stormy && this.roll() < 0.5 ? this.pick(["lost" as const, page(), problem(500, "server_mistake"), problem(503, "database_busy"), problem(401, "signed_out")]) : null);
    const context = { db: phone.db, wire: makeWire(this.server.fetch), logbook_id: LOGBOOK, device: "d", app: "t", tally: emptyTally(), progress: () => {}, now: () => Date.now() + this.later_ms };
    await syncLogbook(context).catch((error) => assert.ok(error instanceof SyncStop, String(error)));
  }

  /** Fair weather: everybody syncs until nobody has anything left to say. */
  async clearUp(): Promise<void> {
    for (let round = 0; round < 3; round++) for (const phone of this.phones) await this.sync(phone, false);
  }

  async held(phone: Place): Promise<string> {
    const rows = await phone.db.records.toArray();
    const plain = rows.map(({ record_id, body, heads, fork, number, state }) => ({ record_id, body, heads, fork, number, state }));
    return JSON.stringify(plain.sort((one, other) => (one.record_id < other.record_id ? -1 : 1)));
  }
}

for (let seed = 1; seed <= SCHEDULES; seed++) {
  test(`schedule ${seed}: all converge and nothing is lost`, async () => {
    const story = new Story(seed * 7919, [await newPlace(), await newPlace(), await newPlace()]);
    for (let step = 0; step < STEPS; step++) await story.step();
    await story.clearUp();
    const held = await Promise.all(story.phones.map((phone) => story.held(phone)));
    assert.equal(held[1], held[0]);
    assert.equal(held[2], held[0]);
    assert.deepEqual(new Set(story.server.entries.map((entry) => entry.id)), story.written);
    for (const phone of story.phones) {
      assert.ok(await countsAgree(phone.db, LOGBOOK));
      assert.equal(await phone.db.entries.count(), story.server.entries.length);
    }
  });
}
