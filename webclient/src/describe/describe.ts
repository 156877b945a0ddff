// A record in a few words, for lists that hold all kinds.

import { showDay } from "../words/dates.ts";
import { decimal } from "../words/decimal.ts";
import { say, t } from "../words/index.ts";

type Body = { readonly [field: string]: unknown } | object;

/** The record whose name makes this one understandable, if any: a fence for an attempt, a horse for an outing. */
export function linkedId(kind: string, body: Body | null): string | null {
  const link = ({ attempt: "fence_id", outing: "horse_id", word: "horse_id", timed_canter: "track_id" } as Record<string, string>)[kind];
  const id = link && body ? (body as Record<string, unknown>)[link] : null;
  return typeof id === "string" ? id : null;
}

export function describe(kind: string, body: Body, linked: Body | null): string {
  const said = body as Record<string, unknown>;
  const name = nameOf(linked);
  if (kind === "attempt") return [say({ key: `outcome.${said.outcome}` }), name, said.element].filter(Boolean).join(", ");
  if (kind === "outing") return [name, said.activity && t(`activity.${said.activity as "event"}`), typeof said.date === "string" && showDay(said.date)].filter(Boolean).join(", ");
  if (kind === "word") return [name, say({ key: `decision.${said.decision}` })].filter(Boolean).join(", ");
  if (kind === "timed_canter") return [name, `${decimal(String(said.distance_m))} m`, `${decimal(Number(said.elapsed_ms) / 1000)} s`].filter(Boolean).join(", ");
  return nameOf(body) ?? "";
}

const LONGEST = 60;

function nameOf(body: Body | null): string | null {
  const said = (body ?? {}) as Record<string, unknown>;
  const name = said.name ?? said.label ?? said.test ?? said.event ?? said.text ?? said.caption ?? said.date ?? said.reason;
  return typeof name === "string" ? (name.length > LONGEST ? `${name.slice(0, LONGEST)}…` : name) : null;
}
