// What the server is asked about people: these things live there alone and need signal.

import { useEffect, useState } from "preact/hooks";

import type { Role } from "../../entries/bodies.ts";
import { makeWire, type Reply } from "../../sync/wire.ts";
import { t } from "../../words/index.ts";
import { toldFault } from "../../words/told.ts";

export const wire = makeWire();

export interface MemberLine {
  account_id: string;
  display_name: string;
  role: Role;
}

export interface InvitationLine {
  id: string;
  role: Role;
  expires_at: string;
  /** Told once, when it is made. */
  code?: string;
}

export interface Asked<T> {
  data: T | null;
  /** What stood in the way, in words. */
  trouble: string | null;
  again: () => void;
}

/** The server's answer at `path`, asked when the screen opens and whenever `again` is called. */
export function useAsked<T>(path: string): Asked<T> {
  const [found, setFound] = useState<Reply<T> | null>(null);
  const ask = () => void wire.get<T>(path).then(setFound);
  useEffect(ask, [path]);
  return { data: found?.kind === "ok" ? found.data : null, trouble: found && troubleOf(found), again: ask };
}

/** Null when the server did as asked. */
export function troubleOf(reply: Reply<unknown>): string | null {
  if (reply.kind === "ok") return null;
  if (reply.kind === "offline") return t("people.offline");
  return toldFault(reply.error).words;
}
