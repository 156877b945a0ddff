// Mending a refused entry: the server said which field is wrong, so that field alone is asked for again.

import { LIMITS } from "../../entries/bodies.ts";
import type { Plain } from "../../entries/merge.ts";
import type { EntryRow } from "../../store/db.ts";

/** The path inside the body that the refusal names, if a person can type it anew: `["elements", "0", "height_cm"]`. */
export function mendablePath(entry: EntryRow): string[] | null {
  const [whole, ...path] = (entry.refusal?.field ?? "").split(/[.[\]]+/).filter(Boolean);
  if (whole !== "body" || !path.length || entry.body === null) return null;
  const value = valueAt(entry.body as Plain, path);
  return typeof value === "object" && value !== null ? null : path;
}

/** In what the value is measured, as the book's limits say; null for texts and words. */
export function unitOf(kind: string, path: string[]): string | null {
  const plain = path.filter((step) => !/^\d+$/.test(step)).join(".");
  return (LIMITS as Record<string, Record<string, { unit?: string }>>)[kind]?.[plain]?.unit ?? null;
}

export function valueAt(body: Plain, path: string[]): unknown {
  return path.reduce<unknown>((value, step) => (value as Plain | undefined)?.[step], body);
}

/** The body with one value replaced; the one given is not changed. */
export function withValue(body: Plain, path: string[], value: unknown): Plain {
  const mended = structuredClone(body);
  const place = valueAt(mended, path.slice(0, -1)) as Plain;
  place[path.at(-1)!] = value;
  return mended;
}

/** What was typed, as the field had it: a number stays a number, nothing becomes null. */
export function read(text: string, before: unknown): unknown {
  if (text.trim() === "") return null;
  const number = Number(text.replace(",", "."));
  return typeof before === "string" || !Number.isFinite(number) ? text : number;
}

const SCREENS: Record<string, (id: string) => string> = {
  outing: (id) => `/outing/${id}/details`,
  attempt: (id) => `/attempt/${id}`,
  fence: (id) => `/fence/${id}`,
  field: (id) => `/field/${id}/edit`,
  horse: (id) => `/horse/${id}`,
  track: (id) => `/tracks/${id}/edit`,
  timed_canter: (id) => `/watch/canter/${id}`,
  flatwork_test: (id) => `/results/flatwork_test/${id}`,
  jumping_round: (id) => `/results/jumping_round/${id}`,
  event_result: (id) => `/results/event_result/${id}`,
};

/** The screen on which records of this kind are edited. */
export function screenOf(entry: EntryRow): string | null {
  return entry.body === null ? null : (SCREENS[entry.kind]?.(entry.record_id) ?? null);
}
