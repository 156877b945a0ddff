// Small records for the tests of recording, made short so that a test shows only what it is about.

import { completeBody } from "../../webclient/src/entries/bodies.ts";
import type { Attempt, Ask, Fence, Outcome, Profile } from "../../webclient/src/entries/bodies.ts";
import type { Letter } from "../../webclient/src/recording/combination.ts";

let count = 0;

/** A record whose id carries `at_ms`, as a phone makes it (RFC 9562 version 7). */
export function record<Body>(body: Body, at_ms: number) {
  count += 1;
  const time = at_ms.toString(16).padStart(12, "0");
  const record_id = `${time.slice(0, 8)}-${time.slice(8)}-7000-8000-${count.toString(16).padStart(12, "0")}`;
  const recorded_at = new Date(at_ms).toISOString();
  return { record_id, body, recorded_at, local_date: recorded_at.slice(0, 10) };
}

export function ids(prefix: string): () => string {
  let made = 0;
  return () => `${prefix}${++made}`;
}

export function attemptAt(fence_id: string, outcome: Outcome = "clear", more: Partial<Attempt> = {}): Attempt {
  return { ...completeBody("attempt", { outing_id: "o", fence_id, outcome }), ...more };
}

interface FenceSample {
  label: string;
  profile?: Profile;
  asks?: Ask[];
  elements?: Letter[];
  order?: number | null;
  favourite?: boolean;
  field_id?: string | null;
  notes?: string;
}

export function fence(sample: FenceSample): Fence {
  const profile = sample.profile ?? "log";
  const elements = (sample.elements ?? []).map((letter) => ({ letter, profile }));
  return completeBody("fence", { field_id: "field", ...sample, profile, elements });
}
