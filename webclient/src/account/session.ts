// Who is signed in, kept on the phone so that the app starts with the last account and no network.

import { computed, signal } from "@preact/signals";

import type { Role } from "../entries/bodies.ts";
import { forget, recall, remember } from "../store/little.ts";
import { logbookId, me } from "../store/place.ts";

export interface Account {
  id: string;
  sign_in_name: string;
  display_name: string;
}

export interface LogbookInfo {
  id: string;
  title: string;
  role: Role;
  log_id: string;
  last_number: number;
}

export interface Session {
  account: Account | null;
  first_run: boolean;
  version: string;
  protocol: number;
  logbooks: LogbookInfo[];
}

/** kept: the last account, not yet confirmed. confirmed: the server said so. ended: it no longer knows us. */
export type Standing = "kept" | "confirmed" | "ended";

/** True until we know whether somebody was here before. */
export const starting = signal(true);
/** What the server said at the start while nobody was signed in: a new server makes its first account. */
export const serverSays = signal<Session | null>(null);
export const session = signal<Session | null>(null);
export const sessionStanding = signal<Standing>("kept");
/** The account of a logbook that was begun on this phone before there was any account. */
export const LOCAL = "local";
export const isLocal = computed(() => session.value?.account?.id === LOCAL);
export const logbooks = computed<LogbookInfo[]>(() => session.value?.logbooks ?? []);

/** Starts with the last account of this phone, without asking anybody. */
export function recallSession(): void {
  adopt(recall<Session>("session"));
  sessionStanding.value = "kept";
}

/** Takes up a session found in a store, when the browser forgot the rest. */
export function restoreSession(found: Session): void {
  remember("session", found);
  adopt(found);
}

/** Takes what the server said of us. An ended session leaves everything on the phone as it is. */
export function takeSession(told: Session): void {
  if (!told.account) {
    sessionStanding.value = "ended";
    return;
  }
  remember("session", told);
  adopt(told);
  sessionStanding.value = "confirmed";
}

export function forgetSession(): void {
  forget("session");
  adopt(null);
}

export function chooseLogbook(id: string): void {
  remember("logbook", id);
  logbookId.value = id;
}

function adopt(told: Session | null): void {
  session.value = told;
  me.value = told?.account ?? null;
  const known = told?.logbooks ?? [];
  const last = recall<string>("logbook");
  logbookId.value = (known.find((logbook) => logbook.id === last) ?? known[0])?.id ?? null;
}
