import type { Told as Words } from "../words/told.ts";

/** The server's words; marked as English where the page is not, so that a screen reader says them as English. */
export function Told({ of: { words, lang } }: { of: Words }) {
  return lang ? <span lang={lang}>{words}</span> : <>{words}</>;
}
