// Where a number of the bar comes from, in the language of the texts. The server says it in English, in parts between
// semicolons; sourced.json of each other language has the parts. What has no words here stays English and says so.

import { knows, say } from "./index.ts";
import { language } from "./language.ts";
import type { Told } from "./told.ts";

/** The end of most parts: “three clear in a row: common practice, no source”. */
export const COMMON = ": common practice, no source";
const ASKED_FROM = /^asked from (.+) on \((.+)\)$/;

export function sourced(source: string): Told[] {
  return source.split("; ").map((part) => (language.value.startsWith("en") ? { words: part } : inWords(part)));
}

function inWords(part: string): Told {
  if (knows(`sourced.${part}`)) return { words: say({ key: `sourced.${part}` }) };
  if (part.endsWith(COMMON)) {
    const what = inWords(part.slice(0, -COMMON.length));
    return what.lang ? { words: part, lang: "en" } : { words: say({ key: "sourced.common", values: { what: what.words } }) };
  }
  const [, level, source] = ASKED_FROM.exec(part) ?? [];
  return level && source ? { words: say({ key: "sourced.asked_from", values: { level, source: inWords(source).words } }) } : { words: part, lang: "en" };
}
