// The texts a person reads, in the chosen language. They live beside the script as one file a language, kept
// on the phone with the rest of the shell.

import { signal } from "@preact/signals";

import type { Key } from "./british.ts";
import { language, rememberLanguage, type Language } from "./language.ts";
import { speak, type Values, type Words } from "./speak.ts";

export type { Key } from "./british.ts";

declare const __WORDS__: Record<Language, string>;

type Table = { readonly [key: string]: Words | undefined };

const table = signal<Table>({});

/** Fetches the texts of the language in use; before the first screen, and again when another is chosen. */
export async function readWords(chosen: Language = language.value): Promise<void> {
  const [common, own] = await Promise.all([textsIn("en-GB"), textsIn(chosen)]);
  table.value = { ...common, ...own };
  language.value = chosen;
}

async function textsIn(chosen: Language): Promise<Table> {
  const reply = await fetch(__WORDS__[chosen]);
  if (!reply.ok) throw new Error(`no texts in ${chosen}: ${reply.status}`);
  return reply.json();
}

/** Changes the language, now and on later days. */
export async function chooseLanguage(chosen: Language): Promise<void> {
  rememberLanguage(chosen);
  await readWords(chosen);
}

/** The text of `key` with its gaps filled. Where it has plural forms, `values.n` chooses the form. */
export function t(key: Key, values: Values = {}): string {
  return say({ key, values });
}

/** Whether there is a text under this key, for words that come from data. */
export function knows(key: string): boolean {
  return key in table.value;
}

/** The same for phrases that pure modules chose, such as `pace.speed_slow`. */
export function say(phrase: { key: string; values?: Values }): string {
  const words = table.value[phrase.key];
  if (words === undefined) console.error(`no words for ${phrase.key}`);
  return speak(words ?? phrase.key, phrase.values ?? {}, language.value);
}
