// The look: paper, night, or as the device says; and sun mode over all of them, one tap away.

import { effect, signal } from "@preact/signals";

import { recall, remember } from "../store/little.ts";

export const LOOKS = ["light", "dark", "device"] as const;
export type Look = (typeof LOOKS)[number];

// light unless chosen otherwise: this is a tool for fields
export const look = signal<Look>(recall<Look>("look") ?? "light");
export const sunMode = signal<boolean>(recall<boolean>("sun") ?? false);

export function chooseLook(chosen: Look): void {
  look.value = chosen;
  remember("look", chosen);
}

export function toggleSunMode(): void {
  sunMode.value = !sunMode.value;
  remember("sun", sunMode.value);
}

/** Keeps the page in the chosen look from now on. */
export function followTheme(): void {
  const night = matchMedia("(prefers-color-scheme: dark)");
  const dark = signal(night.matches);
  night.addEventListener("change", () => void (dark.value = night.matches));
  effect(() => {
    const plain = look.value === "device" ? (dark.value ? "dark" : "light") : look.value;
    document.documentElement.dataset.theme = sunMode.value ? "sun" : plain;
  });
}
