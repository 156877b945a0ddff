// Times and speeds as people type and read them. Twin of server/fieldtally/trade/units.py.

import { decimal } from "../words/decimal.ts";
import { numberIn, rounded, tidy } from "./lengths.ts";

const NUMBER = "(\\d+(?:[.,]\\d*)?|[.,]\\d+)";
const SECONDS = new RegExp(`^${NUMBER}(?:s|sec|seconds)?$`);
const CLOCK = /^(\d+):([0-5]\d(?:[.,]\d*)?)$/;
const MINUTES = new RegExp(`^(\\d+)min(?:${NUMBER}(?:s|sec)?)?$`);
const SPEED = new RegExp(`^${NUMBER}(m/min|mpm|m/s|km/h|kph)?$`);

const MPM_IN: Record<string, number> = { "m/min": 1, mpm: 1, "m/s": 60, "km/h": 1000 / 60, kph: 1000 / 60 };

/** Whole milliseconds from `63.2s`, `1:03.2`, `5 min 20 s`; null where it is none. */
export function parseTime(text: string): number | null {
  const seconds = secondsIn(tidy(text));
  const ms = seconds === null ? null : rounded(seconds * 1000, 0);
  return ms !== null && ms >= 1 && ms <= 86_400_000 ? ms : null;
}

/** Metres per minute from `420`, `7 m/s`, `25 km/h`; null where it is none. */
export function parseSpeed(text: string): number | null {
  const found = SPEED.exec(tidy(text));
  const value = found && numberIn(found[1]!);
  if (value === null) return null;
  const speed = rounded(value * MPM_IN[found?.[2] ?? "m/min"]!, 2);
  return speed >= 50 && speed <= 1000 ? speed : null;
}

/** `5:00`, `1:03.2`: minutes and seconds, tenths where there are any. */
export function showTime(ms: number): string {
  const tenths = rounded(ms / 100, 0);
  const seconds = Math.floor(tenths / 10) % 60;
  const tenth = tenths % 10;
  return `${Math.floor(tenths / 600)}:${String(seconds).padStart(2, "0")}${tenth ? decimal(`.${tenth}`) : ""}`;
}

function secondsIn(plain: string): number | null {
  const clock = CLOCK.exec(plain) ?? MINUTES.exec(plain);
  if (clock) {
    const rest = numberIn(clock[2] ?? "0");
    return rest === null ? null : Number(clock[1]) * 60 + rest;
  }
  const seconds = SECONDS.exec(plain);
  return seconds && numberIn(seconds[1]!);
}
