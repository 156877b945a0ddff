// A logbook begun before any account. It is an ordinary one in a database of its own, with this phone as its
// account; nothing of it is sent. keep.ts moves it under an account later.

import { signal } from "@preact/signals";

import { uuid7 } from "../entries/uuid7.ts";
import { nameFor } from "../store/db.ts";
import { forget, recall, remember } from "../store/little.ts";
import { removeStore } from "../store/lost.ts";
import { close } from "../store/open.ts";
import { t } from "../words/index.ts";
import { forgetSession, LOCAL, restoreSession, type Session } from "./session.ts";
import { openStore, sessionIn } from "./sign.ts";

const BEGUN = "local";

/** Whether such a logbook was begun on this phone and not yet moved or removed. */
export const localBegun = signal(recall(BEGUN) === true);

/** A small setting written just before a flat battery may be lost; the logbook itself is not. */
export async function lookForLocal(): Promise<void> {
  const all = (await indexedDB.databases?.().catch(() => [])) ?? [];
  if (all.some(({ name }) => name === nameFor(LOCAL))) noteBegun();
}

function noteBegun(): void {
  remember(BEGUN, true);
  localBegun.value = true;
}

/** Opens this phone's own logbook; the first time begins it. */
export async function startLocal(): Promise<void> {
  const found = await sessionIn(LOCAL);
  noteBegun();
  restoreSession(found ?? begin());
  await openStore(LOCAL, false);
}

/** Leaves it for the sign-in page. With `remove` it is deleted from the phone, which nothing undoes. */
export async function leaveLocal(remove: boolean): Promise<void> {
  close();
  if (remove) await removeLocal();
  forgetSession();
}

export async function removeLocal(): Promise<void> {
  forget(BEGUN);
  localBegun.value = false;
  await removeStore(LOCAL);
}

function begin(): Session {
  const account = { id: LOCAL, sign_in_name: "", display_name: t("role.rider") };
  const logbook = { id: uuid7(), title: t("local.title"), role: "rider" as const, log_id: "", last_number: 0 };
  return { account, first_run: false, version: "", protocol: 1, logbooks: [logbook] };
}
