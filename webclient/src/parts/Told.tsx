import type { Told as Words } from "../words/told.ts";

const NO_BREAK = "\u00a0"; // a number stays with its per cent

/** The server's words; marked as English where the page is not, so that a screen reader says them as English. */
export function Told({ of: { words, lang } }: { of: Words }) {
  const kept = words.replaceAll(" %", `${NO_BREAK}%`);
  return lang ? <span lang={lang}>{kept}</span> : <>{kept}</>;
}
