// Filled in by the build: the release, and a digest of everything it was built from.

declare const __APP_VERSION__: string;
declare const __BUILD__: string;

export const APP_VERSION = typeof __APP_VERSION__ === "string" ? __APP_VERSION__ : "0.0.0";
export const BUILD = typeof __BUILD__ === "string" ? __BUILD__ : "unbuilt";
