// What a screen reader says after a tap: once, politely, and only what is true by then.

import { signal } from "@preact/signals";

import type { Attempt, Fence } from "../../entries/bodies.ts";
import type { TapState } from "../../recording/taps.ts";
import { t } from "../../words/index.ts";
import { attemptName } from "./names.ts";

export const announced = signal("");

export function announceTap(body: Attempt, fence: Fence, today: boolean, count: number, state: TapState): void {
  const name = attemptName(body, fence);
  announced.value = state === "saved" ? t(today ? "outing.heard" : "outing.heard_so_far", { name, n: count }) : t("outing.heard_not_saved", { name });
}

export function announceUndone(body: Attempt, fence: Fence | undefined, gone: boolean): void {
  const name = attemptName(body, fence);
  announced.value = gone ? t("outing.heard_undone", { name }) : t("outing.heard_not_undone", { name });
}
