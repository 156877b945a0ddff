// Reads a body of any released version as today's. Twin of book/upcast.py; a step is added to both together.

import { completeBody, KINDS, type KindName } from "./bodies.ts";
import type { Plain } from "./merge.ts";

/** `kind/version` -> what makes a body of the next version of it; none where a version only added fields. */
const STEPS: { [kindAndVersion: string]: (body: Plain) => Plain } = {};

export function isKind(kind: string): kind is KindName {
  return Object.hasOwn(KINDS, kind);
}

/** Whether this release knows the kind and this version of it. */
export function readable(kind: string, version: number): boolean {
  return isKind(kind) && version >= 1 && version <= KINDS[kind].version;
}

/** The body as today's release reads it, every default filled in. Only for what is `readable`. */
export function current(kind: string, version: number, body: Plain): Plain {
  if (!isKind(kind)) throw new Error(`not a kind: ${kind}`);
  let now = body;
  for (let step = version; step < KINDS[kind].version; step++) now = STEPS[`${kind}/${step}`]?.(now) ?? now;
  return completeBody(kind, now as never) as unknown as Plain;
}
