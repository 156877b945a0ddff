// Shows and reads lengths in the units the person chose. Inside, heights are cm, distances m, speeds m/min.

import { signal } from "@preact/signals";

import { recall, remember } from "../store/little.ts";
import { decimal, grouped } from "../words/decimal.ts";
import { type System, writeDistance, writeGap, writeHeight } from "./lengths.ts";

export { parseDistance, parseHeight } from "./lengths.ts";
export { parseSpeed, parseTime, showTime } from "./times.ts";

export const units = signal<System>(recall<System>("units") ?? "metric");

export function chooseUnits(system: System): void {
  units.value = system;
  remember("units", system);
}

/** `90 cm`, or `2'11"`. */
export function showHeight(cm: number): string {
  return decimal(writeHeight(cm, units.value));
}

/** `8.9 cm`, or `3.5 in`: the room between two lengths. */
export function showGap(cm: number): string {
  return decimal(writeGap(cm, units.value));
}

/** `8 m`, or `9 yd`: to the whole one, for what is not known finer. */
export function showRough(m: number): string {
  const unit = units.value === "metric" ? 1 : 0.9144;
  return showDistance(Math.round(m / unit) * unit);
}

/** `420 m`, or `459 yd`. */
export function showDistance(m: number): string {
  return grouped(writeDistance(m, units.value));
}
