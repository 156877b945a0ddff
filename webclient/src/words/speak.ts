// From a text with gaps to what the person reads. A text with plural forms is an object; `n` chooses.

import { grouped } from "./decimal.ts";

export type Words = string | { readonly one?: string; readonly other: string };
export type Values = { readonly [name: string]: string | number };

export function speak(words: Words, values: Values, language: string): string {
  const text = typeof words === "string" ? words : choose(words, Number(values.n), language);
  const gap = /\{(\w+)\}/g;
  // of “three more. |In two more outings.” a part that would count nothing is left out
  const said = text.split("|").filter((part) => text === part || ![...part.matchAll(gap)].some(([, name]) => values[name!] === 0));
  return said.join("").replace(gap, (whole, name: string) => shown(values[name] ?? whole)).trimEnd();
}

// what comes as text, such as the name of a fence, keeps its points
function shown(value: string | number): string {
  return typeof value === "number" ? grouped(value) : value;
}

function choose(words: Exclude<Words, string>, n: number, language: string): string {
  const form = new Intl.PluralRules(language).select(n) as "one" | "other";
  return words[form] ?? words.other;
}
