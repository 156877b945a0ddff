// Lengths in a text of the server, which speaks metric, in the units the person chose. Speeds stay in m/min, the
// trade's unit everywhere.

import { showDistance, showHeight, units } from "../units/index.ts";

const HEIGHT = /(\d+(?:[.,]\d+)?) cm(?![\p{L}\d])/gu;
const DISTANCE = /(\d+(?:[.,]\d+)?) m(?![\p{L}\d/])/gu;

export function inUnits(text: string): string {
  if (units.value === "metric") return text;
  return text.replace(HEIGHT, (_, cm: string) => showHeight(read(cm))).replace(DISTANCE, (_, m: string) => showDistance(read(m)));
}

const read = (digits: string) => Number(digits.replace(",", "."));
