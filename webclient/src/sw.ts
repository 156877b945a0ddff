/// <reference lib="webworker" />
// The service worker: keeps one complete version of the app on the phone, and nothing else. Installing fails
// as a whole if a single file fails or differs from its digest; then the version before stays. It never
// touches /api, and takes over only when a page asks for it.

import { cleanupOutdatedCaches, createHandlerBoundToURL, precacheAndRoute } from "workbox-precaching";
import type { RouteHandlerCallbackOptions } from "workbox-core/types.js";
import { NavigationRoute, registerRoute } from "workbox-routing";

declare const self: ServiceWorkerGlobalScope;
declare const __SHELL__: { url: string; revision: string | null; integrity: string }[];

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
