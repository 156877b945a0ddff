// Signing in and out. Signing out never removes what was not sent, whatever else it removes.

import { noteMistake } from "../health/mistakes.ts";
import { getMeta, NAME_PREFIX, openPhoneDb, setMeta } from "../store/db.ts";
import { forget, recall, remember } from "../store/little.ts";
import { lookForLoss, removeStore } from "../store/lost.ts";
import { close, openFor } from "../store/open.ts";
import { openDb } from "../store/place.ts";
import { putBackLost } from "../store/spare.ts";
import { unsentEntries } from "../store/unsent.ts";
import { makeWire, type Reply, type WireError } from "../sync/wire.ts";
import { chooseLogbook, forgetSession, isLocal, LOCAL, logbooks, restoreSession, type Session, session, takeSession } from "./session.ts";

const wire = makeWire();
const SIGN_OUT_PENDING = "sign_out_pending";

/** Null when it worked; `offline` or the server's own words when not. */
export type SignTrouble = "offline" | WireError;

export interface Credentials {
  sign_in_name: string;
  password: string;
}

export async function signIn(credentials: Credentials): Promise<SignTrouble | null> {
  return begin(await wire.post<Session>("/api/session", { ...credentials, device_label: deviceLabel() }));
}

/** The first account of an empty server. */
export async function makeFirstAccount(person: Credentials & { display_name: string }): Promise<SignTrouble | null> {
  return begin(await wire.post<Session>("/api/first-account", person));
}

/** Joins a logbook by an invitation's code: as whoever is signed in, or with a new account. Opens that logbook. */
export async function takeUp(code: string, person: Partial<Credentials & { display_name: string }>): Promise<SignTrouble | null> {
  const before = isLocal.value ? [] : logbooks.value.map(({ id }) => id);
  const trouble = await begin(await wire.post<Session>(`/api/invitations/${encodeURIComponent(code)}`, { ...person, device_label: deviceLabel() }));
  const joined = logbooks.value.find(({ id }) => !before.includes(id));
  if (!trouble && joined) chooseLogbook(joined.id);
  return trouble;
}

/** Opens a logbook whose rider is whoever is signed in. */
export async function openOwnLogbook(): Promise<SignTrouble | null> {
  const trouble = await begin(await wire.post<Session>("/api/logbooks", {}));
  const own = logbooks.value.find(({ role }) => role === "rider");
  if (!trouble && own) chooseLogbook(own.id);
  return trouble;
}

/** Deletes the account on the server, and then this browser's copy. */
export async function leaveForGood(password: string): Promise<SignTrouble | null> {
  const reply = await wire.post<null>("/api/account/end", { password });
  if (reply.kind === "offline") return "offline";
  if (reply.kind === "failed") return reply.error;
  const account_id = session.value!.account!.id;
  close();
  await removeStore(account_id);
  forgetSession();
  return null;
}

/** What the server says of us without signing in; null without signal. */
export async function askSession(): Promise<Session | null> {
  const reply = await wire.get<Session>("/api/session");
  return reply.kind === "ok" ? reply.data : null;
}

/** Starts with the last account of this phone, with no network at all; whether there is one. */
export async function startOffline(): Promise<boolean> {
  if (recall(SIGN_OUT_PENDING) && !isLocal.value) return false;
  if (!session.value?.account) await findInStores();
  const account = session.value?.account;
  if (account) await openStore(account.id, false);
  if (isLocal.value) void finishSignOut();
  return account != null;
}

/** Asks the server who we are: it may know this browser although its storage was emptied. */
export async function startFromServer(): Promise<Session | null> {
  await finishSignOut();
  const told = await askSession();
  if (!told?.account || session.value?.account) return told;
  takeSession(told);
  await openStore(told.account.id, true);
  return told;
}

/** Signs this browser out. With `removeCopy` what was sent also goes from it; unsent entries keep their store. */
export async function signOut(removeCopy: boolean): Promise<void> {
  remember(SIGN_OUT_PENDING, true);
  const account_id = session.value!.account!.id;
  const db = openDb.value;
  const unsent = db ? (await unsentEntries(db)).length : 1;
  if (db) await db.meta.delete("session");
  close();
  if (removeCopy && unsent === 0) await removeStore(account_id);
  forgetSession();
  await finishSignOut();
}

// with no signal the server is told when there is some; until then this browser only forgets who was here
async function finishSignOut(): Promise<void> {
  if (!recall(SIGN_OUT_PENDING)) return;
  const reply = await wire.remove("/api/session");
  if (reply.kind !== "offline") forget(SIGN_OUT_PENDING);
}

// the small settings were wiped but the stores were not
async function findInStores(): Promise<void> {
  const all = (await indexedDB.databases?.().catch(() => [])) ?? [];
  const ids = all.filter((each) => each.name?.startsWith(NAME_PREFIX)).map((each) => each.name!.slice(NAME_PREFIX.length));
  // an account before the logbook from before there was one
  for (const id of ids.sort((one, other) => Number(one === LOCAL) - Number(other === LOCAL))) {
    const found = await sessionIn(id);
    if (found) return restoreSession(found);
  }
}

export async function sessionIn(accountId: string): Promise<Session | undefined> {
  const db = await openPhoneDb(accountId).catch(() => null);
  const found = db ? await getMeta<Session>(db, "session").catch(() => undefined) : undefined;
  db?.close();
  return found;
}

async function begin(reply: Reply<Session>): Promise<SignTrouble | null> {
  if (reply.kind === "offline") return "offline";
  if (reply.kind === "failed") return reply.error;
  forget(SIGN_OUT_PENDING); // the new session has replaced the old one
  const told = reply.data;
  if (openDb.value && session.value?.account?.id !== told.account!.id) close();
  takeSession(told);
  if (!openDb.value) await openStore(told.account!.id, false);
  return null;
}

export async function openStore(accountId: string, before: boolean): Promise<void> {
  await openFor(accountId);
  const db = openDb.value;
  if (!db) return;
  // a full disk must not keep anybody from reading
  await lookForLoss(db, accountId, before).catch(noteMistake);
  await setMeta(db, "session", session.value).catch(noteMistake);
  void putBackLost(db).then((lost) => lost && noteMistake(`the store had lost ${lost}, put back`), noteMistake);
}

/** Names this browser in the list of devices; nothing else is derived from it. */
function deviceLabel(): string {
  const { userAgent } = navigator;
  const system = /iPhone|iPad|Android|Windows|Mac|Linux/.exec(userAgent)?.[0] ?? "";
  const browser = /Firefox|Edg|OPR|Chrome|Safari/.exec(userAgent)?.[0] ?? "";
  return [browser.replace("Edg", "Edge"), system].filter(Boolean).join(", ");
}
