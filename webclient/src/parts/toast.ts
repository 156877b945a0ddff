// What just happened, with its undo, for ten seconds or until the next thing happens.

import { signal } from "@preact/signals";

export interface ToastWords {
  words: string;
  undo?: () => void | Promise<void>;
}

export const SHOWN_MS = 10_000;

export const toastShown = signal<(ToastWords & { id: number }) | null>(null);

let last = 0;
let timer: ReturnType<typeof setTimeout> | undefined;

/** Says what happened; with `undo` a button takes it back. */
export function toast(words: string, undo?: ToastWords["undo"]): void {
  clearTimeout(timer);
  toastShown.value = { id: ++last, words, ...(undo && { undo }) };
  timer = setTimeout(hideToast, SHOWN_MS);
}

export function hideToast(): void {
  clearTimeout(timer);
  toastShown.value = null;
}
