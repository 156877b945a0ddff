// The texts a person reads, in the chosen language. They live beside the script as one file a language: the
// English ones are kept on the phone with the rest of the shell, others once they are wanted (kept.ts).

import { signal } from "@preact/signals";

import type { Key } from "./british.ts";
import { setDecimalMark } from "./decimal.ts";
import { fetchToKeep, keptTexts, type Table, textsIn } from "./kept.ts";
import { type Choice, language, type Language, rememberChoice, wanted } from "./language.ts";
import { speak, type Values } from "./speak.ts";

export type { Key } from "./british.ts";

declare const __WORDS__: Record<Language, string>;

const table = signal<Table>({});

/** The language that is wanted while its texts are not on this phone; English stands in for it. */
export const lacking = signal<Language | null>(null);

const PATIENCE_MS = 2500;

/** Reads the texts of the language in use; before the first screen, and again when another is chosen. */
export async function readWords(): Promise<void> {
  const want = wanted();
  const common = await inShell("en-GB");
  if (want === "en-GB") return show(want, want, common);
  if (want === "en-US") return show(want, want, { ...common, ...(await inShell(want)) });
  await readBeyondShell(want, common);
}

const inShell = async (each: Language): Promise<Table> => textsIn(await fetch(__WORDS__[each]));

/** What the phone keeps is shown at once; for the rest nobody waits long: it is read when it has come. */
async function readBeyondShell(want: Language, common: Table): Promise<void> {
  const url = __WORDS__[want];
  const kept = await keptTexts(url);
  if (kept) show(want, want, { ...common, ...kept.texts });
  if (kept?.current) return;
  const fetched = fetchToKeep(url).then((own) => (show(want, want, { ...common, ...own }), true), () => false);
  if (kept) return;
  const patience = new Promise<boolean>((stop) => setTimeout(stop, PATIENCE_MS, false));
  if (!(await Promise.race([fetched, patience]))) show(want, "en-GB", common);
}

/** Puts texts in `shown` on the screen, unless another language than `want` was chosen meanwhile. */
function show(want: Language, shown: Language, texts: Table): void {
  if (want !== wanted()) return;
  lacking.value = shown === want ? null : want;
  language.value = shown;
  setDecimalMark(shown);
  document.documentElement.lang = shown;
  table.value = texts;
}

/** Changes the language, now and on later days. */
export async function chooseLanguage(chosen: Choice): Promise<void> {
  rememberChoice(chosen);
  await readWords();
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

/** A word inside a sentence or after a comma: English writes it small, German leaves its nouns alone. */
export function inside(word: string): string {
  return language.value.startsWith("en") ? word.toLowerCase() : word;
}
