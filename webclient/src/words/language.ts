// The language of the texts: chosen in settings, apart from the device's own unless that is what was chosen.

import { signal } from "@preact/signals";

import { recall, remember } from "../store/little.ts";

export const LANGUAGES = ["en-GB", "en-US", "de"] as const;
export type Language = (typeof LANGUAGES)[number];

/** What settings offer: a language, or the device's own wherever there are texts in it. */
export const CHOICES = ["device", ...LANGUAGES] as const;
export type Choice = (typeof CHOICES)[number];

export const choice = signal<Choice>(known(recall<Choice>("language")));

/** The language of what stands on the screen; English as long as the texts of another have not arrived. */
export const language = signal<Language>(wanted());

export function rememberChoice(chosen: Choice): void {
  choice.value = chosen;
  remember("language", chosen);
}

/** The language that the choice comes to on this device. */
export function wanted(): Language {
  return choice.value === "device" ? nearest(globalThis.navigator?.language ?? "") : choice.value;
}

// another version of the app may have remembered a language that this one does not have
function known(kept: Choice | null): Choice {
  return kept && CHOICES.includes(kept) ? kept : "device";
}

/** The same language from anywhere, before English. */
export function nearest(device: string): Language {
  const same = (each: string) => each.split("-")[0] === device.split("-")[0];
  return LANGUAGES.find((each) => each === device) ?? LANGUAGES.find(same) ?? "en-GB";
}
