// Who supersedes whom among the entries of one record. Links to entries that are not here lead nowhere, and
// a circle (which only a broken or hostile client can write) does no harm. Twin of book/ancestry.py.

import type { Entry } from "./entry.ts";

/** The entries that no other supersedes, in order; the last entry if all go round in a circle. */
export function headsOf<E extends Entry>(ordered: E[]): E[] {
  const superseded = new Set(ordered.flatMap((entry) => entry.supersedes.filter((old) => old !== entry.id)));
  const heads = ordered.filter((entry) => !superseded.has(entry.id));
  return heads.length ? heads : ordered.slice(-1);
}

/** The entries that supersede none that is here, in order; the first entry if there is no such one. */
export function rootsOf<E extends Entry>(ordered: E[]): E[] {
  const here = new Set(ordered.map((entry) => entry.id));
  const roots = ordered.filter((entry) => !entry.supersedes.some((old) => old !== entry.id && here.has(old)));
  return roots.length ? roots : ordered.slice(0, 1);
}

/** The common ancestors of all heads that are not themselves behind another common ancestor. */
export function nearestCommon<E extends Entry>(ordered: E[], heads: E[]): E[] {
  const byId = new Map(ordered.map((entry) => [entry.id, entry]));
  const each = heads.map((head) => ancestors(byId, head));
  const common = new Set([...each[0]!].filter((id) => each.every((found) => found.has(id))));
  // an ancestor of a common ancestor is common too, so looking one link back is enough
  const behind = new Set([...common].flatMap((id) => byId.get(id)!.supersedes));
  return ordered.filter((entry) => common.has(entry.id) && !behind.has(entry.id));
}

function ancestors(byId: Map<string, Entry>, entry: Entry): Set<string> {
  const found = new Set<string>();
  const ahead = [...entry.supersedes];
  for (let id = ahead.pop(); id !== undefined; id = ahead.pop()) {
    const one = byId.get(id);
    if (!one || found.has(id) || id === entry.id) continue;
    found.add(id);
    ahead.push(...one.supersedes);
  }
  return found;
}
