// From a text with gaps to what the person reads. A text with plural forms is an object; `n` chooses.

import { decimal } from "./decimal.ts";

export type Words = string | { readonly one?: string; readonly other: string };
export type Values = { readonly [name: string]: string | number };

export function speak(words: Words, values: Values, language: string): string {
  const text = typeof words === "string" ? words : choose(words, Number(values.n), language);
  return text.replace(/\{(\w+)\}/g, (gap, name: string) => shown(values[name] ?? gap));
}

// what comes as text, such as the name of a fence, keeps its points
function shown(value: string | number): string {
  return typeof value === "number" ? decimal(value) : value;
}

function choose(words: Exclude<Words, string>, n: number, language: string): string {
  const form = new Intl.PluralRules(language).select(n) as "one" | "other";
  return words[form] ?? words.other;
}
