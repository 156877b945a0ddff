// What this phone can do, asked of the phone itself each time the page opens.

import { canDo } from "../watch/signals.ts";
import { installed } from "../help/platform.ts";

/** asks: it can, after the person was asked. blocked: it could, but was told not to. */
export type Ability = "yes" | "no" | "asks" | "blocked";

export const ABILITIES = ["install", "worker", "wake", "sound", "vibration", "location", "camera", "microphone", "share", "locks", "background"] as const;
export type AbilityName = (typeof ABILITIES)[number];

const yes = (can: unknown): Ability => (can ? "yes" : "no");

const MEASURES: Record<AbilityName, () => Ability | Promise<Ability>> = {
  install: () => yes(installed()),
  worker: () => yes(navigator.serviceWorker?.controller),
  wake: tryWakeLock,
  sound: () => yes(canDo().sound),
  vibration: () => yes(canDo().vibration),
  location: () => permission("geolocation", navigator.geolocation),
  camera: () => permission("camera", navigator.mediaDevices),
  microphone: () => permission("microphone", navigator.mediaDevices),
  share: () => yes("canShare" in navigator),
  locks: () => yes("locks" in navigator),
  background: () => "no",
};

export async function measure(): Promise<Record<AbilityName, Ability>> {
  const found = await Promise.all(ABILITIES.map(async (name) => [name, await MEASURES[name]()] as const));
  return Object.fromEntries(found) as Record<AbilityName, Ability>;
}

// a phone saving its battery has the function and refuses
async function tryWakeLock(): Promise<Ability> {
  if (!canDo().wake_lock) return "no";
  return navigator.wakeLock.request("screen").then((lock) => (void lock.release(), "yes" as const), () => "blocked" as const);
}

async function permission(name: string, there: unknown): Promise<Ability> {
  if (!there) return "no";
  const { state } = (await navigator.permissions?.query({ name: name as PermissionName }).catch(() => null)) ?? { state: "prompt" };
  return state === "granted" ? "yes" : state === "denied" ? "blocked" : "asks";
}
