// Back inside the app; a deep link has nothing behind it, so it says where back should lead.

import { navigate } from "wouter-preact/use-browser-location";

let steps = 0;

/** Counts the screens seen since the app started, so that back never leaves the app by mistake. */
export function countStep(): void {
  steps += 1;
}

export function goBack(otherwise: string): void {
  if (steps > 1) {
    steps -= 2; // the step back is counted again when its screen opens
    history.back();
  } else {
    navigate(otherwise, { replace: true });
  }
}
