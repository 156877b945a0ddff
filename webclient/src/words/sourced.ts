// Where a number of the bar comes from, in the language of the texts. The server says it in English, in parts between
// semicolons; sourced.json of each other language has the parts. What has no words here stays English and says so.

import { knows, say } from "./index.ts";
import { language } from "./language.ts";
import type { Told } from "./told.ts";

/** The end of most parts: “three clear in a row: common practice, no source”. */
export const COMMON = ": common practice, no source";
const ASKED_FROM = /^asked from (.+) on \((.+)\)$/;

/** One list a part: a publication named within one stays English, and only it says so. */
export function sourced(source: string): Told[][] {
  return source.split("; ").map((part) => (language.value.startsWith("en") ? [{ words: part }] : askedFrom(part) ?? [inWords(part)]));
}

function askedFrom(part: string): Told[] | null {
  const [, level, source] = ASKED_FROM.exec(part) ?? [];
  if (!level || !source) return null;
  const [before, after] = say({ key: "sourced.asked_from", values: { level, source: "\0" } }).split("\0");
  return [{ words: before! }, inWords(source), { words: after! }];
}

function inWords(part: string): Told {
  if (knows(`sourced.${part}`)) return { words: say({ key: `sourced.${part}` }) };
  if (part.endsWith(COMMON)) {
    const what = inWords(part.slice(0, -COMMON.length));
    return what.lang ? { words: part, lang: "en" } : { words: say({ key: "sourced.common", values: { what: what.words } }) };
  }
  return { words: part, lang: "en" };
}
