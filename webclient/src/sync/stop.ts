// Why a sync ends before its end. Whatever it did so far is stored and stays.

import type { SyncTrouble } from "./state.ts";
import type { Reply } from "./wire.ts";

export class SyncStop extends Error {
  trouble: SyncTrouble;
  retry_after_ms: number | null;

  constructor(trouble: SyncTrouble, retry_after_ms: number | null = null) {
    super(`sync stopped: ${trouble}`);
    this.name = "SyncStop";
    this.trouble = trouble;
    this.retry_after_ms = retry_after_ms;
  }
}

/** The server now numbers anew: it was restored from a backup. */
export class LogChanged extends Error {
  log_id: string | null;

  constructor(log_id: string | null) {
    super("log changed");
    this.name = "LogChanged";
    this.log_id = log_id;
  }
}

/** The data of a reply; anything else ends the sync with its reason. */
export function dataOf<T>(reply: Reply<T>): T {
  if (reply.kind === "ok") return reply.data;
  throw stopFor(reply);
}

export function stopFor(reply: Exclude<Reply<unknown>, { kind: "ok" }>): SyncStop {
  if (reply.kind === "offline") return new SyncStop("offline");
  return new SyncStop(troubleOf(reply.status), reply.retry_after_ms);
}

function troubleOf(status: number): SyncTrouble {
  if (status === 401) return "signed_out";
  if (status === 403 || status === 404) return "no_access";
  return status === 429 ? "too_many" : "server_trouble";
}
