/// <reference lib="webworker" />
// The service worker: keeps one complete version of the app on the phone, and nothing else. Installing fails
// as a whole if a single file fails or differs from its digest; then the version before stays. It never
// touches /api, and takes over only when a page asks for it.

import { cleanupOutdatedCaches, createHandlerBoundToURL, precacheAndRoute } from "workbox-precaching";
import type { RouteHandlerCallbackOptions } from "workbox-core/types.js";
import { NavigationRoute, registerRoute } from "workbox-routing";

import { fetchAndKeep, fromHome, KEPT_HOME } from "./update/homeFiles.ts";
import { editionsOf, KEPT_TEXTS } from "./words/editions.ts";

declare const self: ServiceWorkerGlobalScope;
declare const __SHELL__: { url: string; revision: string | null; integrity: string }[];
declare const __HOME__: { url: string; integrity: string }[];
declare const __BEYOND_SHELL__: { url: string; integrity: string }[];

precacheAndRoute(__SHELL__, {
  cleanURLs: false,
  directoryIndex: null as unknown as string,
});
cleanupOutdatedCaches();

// Every address of the app, with whatever query, is the same page. Should the browser have dropped it, its
// digest lets it be fetched and kept again; should the server have a newer one by then, that one will do.
const page = createHandlerBoundToURL("/index.html");
const { integrity } = __SHELL__.find(({ url }) => url === "/index.html")!;
const kept = (asked: RouteHandlerCallbackOptions) => page({ ...asked, params: { integrity } as never });
registerRoute(new NavigationRoute((asked) => kept(asked).catch(() => fetch(asked.request)), { denylist: [/^\/api\//] }));

self.addEventListener("message", (event) => {
  if (event.data?.type === "take_over") void self.skipWaiting();
});

// the very first installation: from now on this page works with no signal, without a reload
self.addEventListener("activate", (event) => event.waitUntil(self.clients.claim()));

// The screens of home and desk: kept beside the shell, so that a phone is ready for the field without them. What
// does not arrive with the installation is fetched when a page asks for it.
registerRoute(({ url }) => __HOME__.some((file) => file.url === url.pathname), ({ url }) => fromHome(__HOME__.find((file) => file.url === url.pathname)!));
self.addEventListener("install", (event) => event.waitUntil(Promise.all(__HOME__.map((file) => fetchAndKeep(file).catch(() => undefined)))));
self.addEventListener("activate", (event) => event.waitUntil(dropOtherHomes()));

async function dropOtherHomes(): Promise<void> {
  const store = await caches.open(KEPT_HOME);
  const others = (await store.keys()).filter(({ url }) => !__HOME__.some((file) => url.endsWith(file.url)));
  await Promise.all(others.map((request) => store.delete(request)));
}

// A language beyond the shell that the phone keeps (words/kept.ts): its next edition comes with the update. If
// it does not arrive, the edition before serves on, and no update fails for it.
self.addEventListener("install", (event) => event.waitUntil(Promise.all(__BEYOND_SHELL__.map(fetchNextEdition))));

async function fetchNextEdition({ url, integrity }: { url: string; integrity: string }): Promise<void> {
  const kept = editionsOf(url, await addressesKept());
  if (!kept.length || kept.at(-1)!.endsWith(url)) return;
  const reply = await fetch(url, { integrity }).catch(() => null);
  if (reply?.ok) await (await caches.open(KEPT_TEXTS)).put(url, reply).catch(() => undefined);
}

async function addressesKept(): Promise<string[]> {
  const store = await caches.open(KEPT_TEXTS);
  return (await store.keys()).map((request) => request.url);
}

// once this version is the one that runs, earlier editions go where the one of this version is there
self.addEventListener("activate", (event) => event.waitUntil(Promise.all(__BEYOND_SHELL__.map(dropEarlierEditions))));

async function dropEarlierEditions({ url }: { url: string }): Promise<void> {
  const editions = editionsOf(url, await addressesKept());
  if (!editions.at(-1)?.endsWith(url)) return;
  const store = await caches.open(KEPT_TEXTS);
  await Promise.all(editions.slice(0, -1).map((address) => store.delete(address)));
}
