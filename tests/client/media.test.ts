// Sending photos: after the records, in pieces, on from where it stood, one bad one never in the way of others.

import assert from "node:assert/strict";
import { createHash } from "node:crypto";
import { test } from "node:test";

import { LOGBOOK, newPlace } from "./storage.ts"; // first: the store looks for IndexedDB as it is loaded

import { uuid7 } from "../../webclient/src/entries/uuid7.ts";
import { storeBytes } from "../../webclient/src/media/keep.ts";
import { fitted } from "../../webclient/src/media/shrink.ts";
import { freeSpace } from "../../webclient/src/media/space.ts";
import { getMeta, nameFor, openPhoneDb } from "../../webclient/src/store/db.ts";
import { remember } from "../../webclient/src/store/little.ts";
import type { Place } from "../../webclient/src/store/place.ts";
import { writeBody, writePutBack, writeTakeBack } from "../../webclient/src/store/write.ts";
import { countAll } from "../../webclient/src/sync/counts.ts";
import { startOver } from "../../webclient/src/sync/cursor.ts";
import { askToSend, BY_HAND, PIECE_BYTES, sendMedia } from "../../webclient/src/sync/media.ts";
import { makeMediaWire } from "../../webclient/src/sync/mediaWire.ts";
import { SyncStop } from "../../webclient/src/sync/stop.ts";
import { page, problem } from "./pretendServer.ts";

type Fault = (method: string, offset: number, name: string) => Response | "lost" | null;

/** The media rooms of docs/protocol.md in a few lines. */
class PretendShelf {
  got = new Map<string, Buffer>();
  whole = new Map<string, Buffer>();
  requests: string[] = [];
  fault: Fault = () => null;

  wire = makeMediaWire(async (input, init) => {
    const name = String(input).split("/").at(-1)!;
    const headers = new Headers(init?.headers);
    const offset = Number(headers.get("Upload-Offset") ?? -1);
    const method = init?.method ?? "GET";
    this.requests.push(method === "PATCH" ? `PATCH ${offset}` : method);
    const fault = this.fault(method, offset, name);
    if (fault instanceof Response) return fault;
    const reply = method === "HEAD" ? this.state(name) : this.add(name, offset, Number(headers.get("Upload-Length")), Buffer.from(init!.body as ArrayBuffer));
    if (fault === "lost") throw new TypeError("network gone");
    return reply;
  });

  state(name: string): Response {
    const whole = this.whole.get(name);
    return new Response(null, { headers: { "Upload-Offset": `${(whole ?? this.got.get(name))?.length ?? 0}`, "Upload-Complete": whole ? "?1" : "?0" } });
  }

  add(name: string, offset: number, size: number, piece: Buffer): Response {
    const got = this.got.get(name) ?? Buffer.alloc(0);
    if (offset !== got.length) return problem(409, "wrong_offset", [{ received_bytes: got.length }]);
    const now = Buffer.concat([got, piece]);
    this.got.set(name, now);
    if (now.length < size) return Response.json({ received_bytes: now.length, complete: false });
    this.got.delete(name);
    if (digest(now) !== name) return problem(422, "wrong_digest");
    this.whole.set(name, now);
    return Response.json({ received_bytes: size, complete: true });
  }
}

const digest = (bytes: Uint8Array) => createHash("sha256").update(bytes).digest("hex");

/** A photo of `size` bytes about nothing in particular, on the phone and unsent. */
async function photo({ db, logbook_id, me }: Place, size: number, seed = 1): Promise<{ name: string; bytes: Buffer; record_id: string }> {
  const bytes = Buffer.alloc(size, seed);
  const sha256 = digest(bytes);
  const kept = bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + size) as ArrayBuffer;
  await storeBytes(db, { logbook_id, sha256, media_type: "image/jpeg", size_bytes: size, state: "here" }, kept);
  const body = { about_id: uuid7(), media_sha256: sha256, media_type: "image/jpeg" as const, size_bytes: size, width_px: 4, height_px: 3 };
  const { record_id } = await writeBody({ db, logbook_id, me }, "photo", body);
  return { name: sha256, bytes, record_id };
}

const send = (place: Place, shelf: PretendShelf, now?: number) => sendMedia(place.db, () => undefined, shelf.wire, now);
const waiting = async (place: Place) => (await countAll(place.db)).photos;

test("a photo goes in pieces and is then known to be sent", async () => {
  const [place, shelf] = [await newPlace(), new PretendShelf()];
  const { name, bytes } = await photo(place, 2 * PIECE_BYTES + 7);
  assert.equal(await waiting(place), 1);
  await send(place, shelf);
  assert.deepEqual(shelf.requests, ["HEAD", "PATCH 0", `PATCH ${PIECE_BYTES}`, `PATCH ${2 * PIECE_BYTES}`]);
  assert.ok(shelf.whole.get(name)!.equals(bytes));
  assert.equal(await waiting(place), 0);
  await send(place, shelf);
  assert.equal(shelf.requests.length, 4); // nothing left to ask for
});

test("after a cut it goes on where the server stands, also where only the answer was lost", async () => {
  const [place, shelf] = [await newPlace(), new PretendShelf()];
  const { name, bytes } = await photo(place, 2 * PIECE_BYTES + 7);
  shelf.fault = (method, offset) => (method === "PATCH" && offset === PIECE_BYTES ? "lost" : null);
  await assert.rejects(send(place, shelf), (error: SyncStop) => error instanceof SyncStop && error.trouble === "offline");
  shelf.fault = () => null;
  shelf.requests = [];
  await send(place, shelf);
  assert.deepEqual(shelf.requests, ["HEAD", `PATCH ${2 * PIECE_BYTES}`]);
  assert.ok(shelf.whole.get(name)!.equals(bytes));
});

test("a server that stands elsewhere than it said is followed", async () => {
  const [place, shelf] = [await newPlace(), new PretendShelf()];
  const { name, bytes } = await photo(place, PIECE_BYTES + 7);
  shelf.got.set(name, bytes.subarray(0, 1000));
  shelf.fault = (method) => (method === "HEAD" ? new Response(null, { headers: { "Upload-Offset": "0", "Upload-Complete": "?0" } }) : null);
  await send(place, shelf);
  assert.deepEqual(shelf.requests, ["HEAD", "PATCH 0", "PATCH 1000"]);
  assert.ok(shelf.whole.get(name)!.equals(bytes));
});

test("what was damaged on the way is sent once more from the start", async () => {
  const [place, shelf] = [await newPlace(), new PretendShelf()];
  const { name, bytes } = await photo(place, 1000);
  shelf.got.set(name, Buffer.alloc(400, 99)); // a power cut left rubbish on the server's disk
  await send(place, shelf);
  assert.ok(shelf.whole.get(name)!.equals(bytes));
});

test("one that the server will not have waits with its reason and holds up no other", async () => {
  const [place, shelf] = [await newPlace(), new PretendShelf()];
  const [bad, good] = [await photo(place, 500, 1), await photo(place, 500, 2)];
  shelf.fault = (method, _, name) => (method === "PATCH" && name === bad.name ? problem(413, "quota_full") : null);
  await send(place, shelf, 1000);
  assert.deepEqual([...shelf.whole.keys()], [good.name]);
  assert.equal((await place.db.media.get([LOGBOOK, bad.name]))!.refusal, "quota_full");
  assert.equal(await waiting(place), 1);
  shelf.fault = () => null;
  await send(place, shelf, 2000); // not again at once
  assert.equal(shelf.whole.size, 1);
  askToSend();
  await send(place, shelf, 2000); // but when the person asks
  assert.equal(shelf.whole.size, 2);
});

test("signed out, too often, a portal's page: everything stops and waits", async () => {
  for (const [reply, trouble] of [[problem(401, "signed_out"), "signed_out"], [problem(429, "too_many"), "too_many"], [problem(503, "no_room"), "server_trouble"], [page(), "offline"], [page(502), "offline"]] as const) {
    const [place, shelf] = [await newPlace(), new PretendShelf()];
    await photo(place, 500);
    shelf.fault = () => reply.clone();
    await assert.rejects(send(place, shelf), (error: SyncStop) => error.trouble === trouble, trouble);
    assert.equal(await waiting(place), 1);
  }
});

test("where photos go by hand they wait for the button", async () => {
  const [place, shelf] = [await newPlace(), new PretendShelf()];
  await photo(place, 500);
  remember(BY_HAND, true);
  await send(place, shelf);
  assert.deepEqual(shelf.requests, []);
  askToSend();
  await send(place, shelf);
  remember(BY_HAND, false);
  assert.equal(shelf.whole.size, 1);
});

test("a photo taken back before it was sent stays here, and goes when it is put back", async () => {
  const [place, shelf] = [await newPlace(), new PretendShelf()];
  const { record_id } = await photo(place, 500);
  await writeTakeBack(place, record_id);
  assert.equal(await waiting(place), 0);
  await send(place, shelf);
  assert.deepEqual(shelf.requests, []);
  await writePutBack(place, record_id);
  await send(place, shelf);
  assert.equal(shelf.whole.size, 1);
});

test("after a restore of the server each photo is asked for again, and only what it lost is sent", async () => {
  const [place, shelf] = [await newPlace(), new PretendShelf()];
  const [lost] = [await photo(place, 500, 1), await photo(place, 500, 2)];
  await send(place, shelf);
  shelf.whole.delete(lost.name);
  shelf.requests = [];
  await startOver(place.db, LOGBOOK, "log-2");
  await send(place, shelf);
  assert.deepEqual(shelf.requests.filter((each) => each !== "HEAD"), ["PATCH 0"]);
  assert.equal(shelf.whole.size, 2);
});

test("making room takes what the server has now, never what waits, and sends again what it lost", async () => {
  const [place, shelf] = [await newPlace(), new PretendShelf()];
  const [sent, lost] = [await photo(place, 500, 1), await photo(place, 500, 2)];
  await send(place, shelf);
  const unsent = await photo(place, 500, 3);
  shelf.whole.delete(lost.name);
  shelf.fault = () => "lost";
  assert.equal(await freeSpace(place.db, shelf.wire), null);
  assert.equal(await place.db.media_bytes.count(), 3);
  shelf.fault = () => null;
  assert.equal(await freeSpace(place.db, shelf.wire), 1);
  assert.equal(await place.db.media_bytes.get([LOGBOOK, sent.name]), undefined);
  assert.deepEqual((await place.db.media.toArray()).map(({ sha256, state }) => [sha256, state]).sort(), [[lost.name, "here"], [unsent.name, "here"]].sort());
});

test("a picture keeps its shape and never grows", () => {
  assert.deepEqual(fitted(4032, 3024), { width_px: 1600, height_px: 1200 });
  assert.deepEqual(fitted(3024, 4032), { width_px: 1200, height_px: 1600 });
  assert.deepEqual(fitted(640, 480), { width_px: 640, height_px: 480 });
  assert.deepEqual(fitted(20_000, 3), { width_px: 1600, height_px: 1 });
});

test("a phone that comes from the version before photos keeps all it had", async () => {
  const id = `older-${process.pid}`;
  const before = await new Promise<IDBDatabase>((done) => {
    const asked = indexedDB.open(nameFor(id), 1);
    asked.onupgradeneeded = () => asked.result.createObjectStore("meta", { keyPath: "key" }).put({ key: "device", value: "kept" });
    asked.onsuccess = () => done(asked.result);
  });
  before.close();
  const db = await openPhoneDb(id);
  assert.equal(await getMeta(db, "device"), "kept");
  assert.equal(await db.media.count(), 0);
  db.close();
});
