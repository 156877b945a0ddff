// Back inside the app; a deep link has nothing behind it, so it says where back should lead.

import { navigate } from "wouter-preact/use-browser-location";

/** Screens behind this one in the browser's history that are ours. */
let behind = 0;

/** Counts steps, so that back never leaves the app by mistake; and begins another kind of screen at its top. */
export function followHistory(): void {
  let place = section();
  const arrive = () => {
    if (section() !== place) scrollTo(0, 0);
    place = section();
  };
  // wouter tells of both: a screen that takes another's place leaves nothing behind
  addEventListener("pushState", () => (behind += 1) && arrive());
  addEventListener("replaceState", arrive);
  addEventListener("popstate", () => {
    behind = Math.max(0, behind - 1);
    place = section(); // the browser itself scrolls to where it was
  });
}

export function goBack(otherwise: string): void {
  if (behind > 0) history.back();
  else navigate(otherwise, { replace: true });
}

function section(): string {
  return location.pathname.split("/")[1] ?? "";
}
