// The last things that went wrong in this browser, kept for diagnostics: never what anybody typed.

import { recall, remember } from "../store/little.ts";

export interface Mistake {
  at: string;
  words: string;
}

const MOST = 20;

export function noteMistake(error: unknown): void {
  const mistakes = recall<Mistake[]>("mistakes") ?? [];
  const words = error instanceof Error ? `${error.name}: ${error.message}` : String(error);
  remember("mistakes", [...mistakes, { at: new Date().toISOString(), words: withoutQuoted(words).slice(0, 300) }].slice(-MOST));
}

// browsers quote in an error what they could not read, and that may be somebody's note
function withoutQuoted(words: string): string {
  return words.replace(/".*"/gs, '"…"');
}

export function mistakes(): Mistake[] {
  return recall<Mistake[]>("mistakes") ?? [];
}

export function listenForMistakes(): void {
  addEventListener("error", (event) => noteMistake(event.error ?? event.message));
  addEventListener("unhandledrejection", (event) => noteMistake(event.reason));
}
