// The texts of a language that is not part of the shell: fetched when it is wanted, then kept on the phone
// beside the shell. The worker fetches the next edition with an update (sw.ts); until that has arrived the
// edition before stays, for most of its texts still hold.

import { editionsOf, KEPT_TEXTS } from "./editions.ts";
import type { Words } from "./speak.ts";

export type Table = { readonly [key: string]: Words | undefined };

/** The edition at `url` if the phone has it, else the one before it, else null; never the network. */
export async function keptTexts(url: string): Promise<{ texts: Table; current: boolean } | null> {
  try {
    const store = await caches.open(KEPT_TEXTS);
    const best = editionsOf(url, (await store.keys()).map((request) => request.url)).at(-1);
    const kept = best && (await store.match(best));
    return kept ? { texts: await textsIn(kept), current: best.endsWith(url) } : null;
  } catch {
    return null; // this browser keeps nothing, or what it kept cannot be read: then it is fetched
  }
}

/** Fetches the edition at `url`, and keeps it where the browser lets it. Rejects unless all of it arrives. */
export async function fetchToKeep(url: string): Promise<Table> {
  const reply = await fetch(url);
  const copy = reply.clone();
  const texts = await textsIn(reply);
  await (globalThis.caches?.open(KEPT_TEXTS).then((store) => store.put(url, copy)).catch(() => undefined));
  return texts;
}

export async function textsIn(reply: Response): Promise<Table> {
  if (!reply.ok) throw new Error(`no texts at ${reply.url}: ${reply.status}`);
  return unfold(await reply.json());
}

// the build folds the keys, `{ horse: { name: … } }`, for a twentieth less to fetch
function unfold(folded: { [area: string]: { [rest: string]: Words } }): Table {
  return Object.fromEntries(Object.entries(folded).flatMap(([area, words]) => Object.entries(words).map(([rest, text]) => [`${area}.${rest}`, text])));
}
