// The language of the texts: chosen in settings, apart from the device's own.

import { signal } from "@preact/signals";

import { recall, remember } from "../store/little.ts";

export const LANGUAGES = ["en-GB", "en-US"] as const;
export type Language = (typeof LANGUAGES)[number];

export const language = signal<Language>(recall<Language>("language") ?? fromDevice());

export function rememberLanguage(chosen: Language): void {
  remember("language", chosen);
}

function fromDevice(): Language {
  return globalThis.navigator?.language === "en-US" ? "en-US" : "en-GB";
}
