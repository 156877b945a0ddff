// Registers the service worker, looks for updates when the app comes to the front, and takes an update only
// when the person says so. A reload follows one tap and never anything else, so it cannot loop.

import { signal } from "@preact/signals";

import { noteMistake } from "../health/mistakes.ts";

/** A newer version is fetched complete and waits. */
export const updateWaits = signal(false);

let waiting: ServiceWorker | null = null;
let asked = false;

const AT_MOST_EVERY_MS = 60_000;

export function watchForUpdates(): void {
  if (!navigator.serviceWorker) return;
  navigator.serviceWorker.addEventListener("controllerchange", () => asked && location.reload());
  void navigator.serviceWorker.register("/sw.js", { updateViaCache: "none" }).then(follow, noteMistake);
}

/** Lets the waiting version take over; the page reloads once it has. */
export function takeUpdate(): void {
  asked = true;
  waiting?.postMessage({ type: "take_over" });
}

function follow(registration: ServiceWorkerRegistration): void {
  offer(registration.waiting);
  registration.addEventListener("updatefound", () => {
    const found = registration.installing;
    found?.addEventListener("statechange", () => found.state === "installed" && offer(registration.waiting));
  });
  lookOnForeground(registration);
}

// the very first installation waits for nobody and is not an update
function offer(worker: ServiceWorker | null): void {
  if (!worker || !navigator.serviceWorker.controller) return;
  waiting = worker;
  updateWaits.value = true;
}

function lookOnForeground(registration: ServiceWorkerRegistration): void {
  let last = Date.now();
  document.addEventListener("visibilitychange", () => {
    if (document.visibilityState !== "visible" || Date.now() - last < AT_MOST_EVERY_MS) return;
    last = Date.now();
    registration.update().catch(() => undefined); // no signal: the next time will do
  });
}
