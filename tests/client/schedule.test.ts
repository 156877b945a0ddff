// When sending happens: at the start, after a save however unlucky its moment, on coming to the front, again
// and again while there is no answer, and never twice at once.

import assert from "node:assert/strict";
import { beforeEach, mock, test } from "node:test";

import { LOGBOOK, newPlace } from "./storage.ts"; // first: the store looks for IndexedDB as it is loaded

import { json, PretendServer } from "./pretendServer.ts";

// the little of a page that the schedule listens to
const pageListeners = new Map<string, () => void>();
const listen = (name: string, listener: () => void) => void pageListeners.set(name, listener);
Object.assign(globalThis, { addEventListener: listen, document: { addEventListener: listen, visibilityState: "visible" } });
let answer: typeof fetch;
globalThis.fetch = (...call) => answer(...call);

const { recallSession, restoreSession, sessionStanding } = await import("../../webclient/src/account/session.ts");
const { save } = await import("../../webclient/src/store/book.ts");
const { openDb } = await import("../../webclient/src/store/place.ts");
const { startSync, syncNow } = await import("../../webclient/src/sync/schedule.ts");
const { syncState } = await import("../../webclient/src/sync/state.ts");

const ACCOUNT = { id: "11111111-1111-4111-8111-111111111111", sign_in_name: "rika", display_name: "Rika" };
const SESSION = { account: ACCOUNT, first_run: false, version: "0.1.0", protocol: 1, logbooks: [{ id: LOGBOOK, title: "Rika", role: "rider" as const, log_id: "log-1", last_number: 0 }] };

let server: PretendServer;
let asked: string[];

/** The pretend server with the other rooms of the wire. */
function answering(): typeof fetch {
  return async (input, init) => {
    const path = String(input);
    asked.push(`${init?.method ?? "GET"} ${path.split("?")[0]!.replace(`/api/logbooks/${LOGBOOK}`, "")}`);
    if (path === "/api/session") return json(SESSION);
    if (path.endsWith("/standings?packed=1")) return json({ log_id: server.log_id, as_of: "2026-05-03", logbook_number: server.entries.length, standings: [] });
    if (path === "/api/rulebooks") return json([]);
    return server.fetch(input, init);
  };
}

const offline: typeof fetch = async (input) => {
  asked.push(String(input));
  throw new TypeError("no network");
};

async function until(what: () => boolean | Promise<boolean>): Promise<void> {
  for (let tries = 0; tries < 400; tries++) {
    if (await what()) return;
    await new Promise((resolve) => setImmediate(resolve));
    mock.timers.tick(200); // 80 s in all: longer than the longest wait
  }
  assert.fail("it never happened");
}

const sent = () => server.entries.map((entry) => (entry.body as { name: string }).name);

mock.timers.enable({ apis: ["setTimeout", "setInterval"] });
recallSession();
startSync();

beforeEach(async () => {
  server = new PretendServer();
  asked = [];
  answer = answering();
  restoreSession(SESSION);
  sessionStanding.value = "kept";
  openDb.value = (await newPlace()).db;
  await until(() => syncState.value.last_sent_at_ms !== null && syncState.value.phase === "idle");
});

test("it asks who we are, sends, fetches, and fetches standings and rulebooks", async () => {
  assert.deepEqual(asked, ["GET /api/session", "GET /entries", "GET /standings", "GET /api/rulebooks"]);
});

test("a save is sent a moment later, and a burst of them together", async () => {
  await save("field", { name: "Hill" });
  await save("field", { name: "Wood" });
  await until(() => sent().length === 2);
  assert.equal(server.pushes.length, 1);
});

test("what is saved while a sync is under way goes out with the next one, soon", async () => {
  let inTheMiddle: () => void = () => {};
  const plain = answering();
  answer = async (input, init) => {
    const reply = await plain(input, init);
    if (String(input).includes("after=")) await new Promise<void>((resolve) => (inTheMiddle = resolve));
    return reply;
  };
  const running = syncNow();
  await until(() => asked.at(-1)!.endsWith("/entries"));
  await new Promise((resolve) => setImmediate(resolve));
  await save("field", { name: "Hill" });
  answer = plain;
  inTheMiddle();
  await running;
  await until(() => sent().includes("Hill"));
});

test("with no answer it tries again within a minute, each time, and says what waits", async () => {
  answer = offline;
  await save("field", { name: "Hill" });
  await until(() => syncState.value.trouble === "offline");
  assert.equal(syncState.value.waiting, 1);
  for (let tries = 0; tries < 3; tries++) {
    const before = asked.length;
    mock.timers.tick(60_000);
    await until(() => asked.length > before);
  }
  answer = answering();
  mock.timers.tick(60_000);
  await until(() => sent().includes("Hill") && syncState.value.trouble === null);
  assert.equal(syncState.value.waiting, 0);
});

test("coming to the front, or back from the browser's store of pages, sends at once", async () => {
  for (const name of ["visibilitychange", "pageshow", "online"]) {
    asked = [];
    pageListeners.get(name)!();
    await until(() => asked.some((each) => each.endsWith("/entries")));
    await until(() => syncState.value.phase === "idle");
    await syncNow();
  }
});

test("two calls at once are one sync", async () => {
  asked = [];
  const [one, other] = await Promise.all([syncNow(), syncNow()]);
  assert.equal(one, other);
  assert.equal(asked.filter((each) => each === "GET /entries").length, 1);
});

test("somebody else signed in on this browser: nothing of ours is sent in their name", async () => {
  sessionStanding.value = "kept";
  const plain = answering();
  answer = async (input, init) => (String(input) === "/api/session" ? json({ ...SESSION, account: { ...ACCOUNT, id: "99999999-9999-4999-8999-999999999999" } }) : plain(input, init));
  await save("field", { name: "Hill" });
  await until(() => syncState.value.trouble === "signed_out" && syncState.value.waiting === 1);
  assert.deepEqual([sent(), syncState.value.waiting, sessionStanding.value], [[], 1, "ended"]);
});
