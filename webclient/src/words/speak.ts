// From a text with gaps to what the person reads. A text with plural forms is an object; `n` chooses.

export type Words = string | { readonly one?: string; readonly other: string };
export type Values = { readonly [name: string]: string | number };

export function speak(words: Words, values: Values, language: string): string {
  const text = typeof words === "string" ? words : choose(words, Number(values.n), language);
  return text.replace(/\{(\w+)\}/g, (gap, name: string) => String(values[name] ?? gap));
}

function choose(words: Exclude<Words, string>, n: number, language: string): string {
  const form = new Intl.PluralRules(language).select(n) as "one" | "other";
  return words[form] ?? words.other;
}
