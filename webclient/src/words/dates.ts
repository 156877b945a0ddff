// Days and times as people read them, in the chosen language.

import { language } from "./language.ts";

/** `Sun 3 May 2026` from a civil day; the day never shifts with a time zone. */
export function showDay(day: string): string {
  return onDay(day, { weekday: "short", day: "numeric", month: "short", year: "numeric" });
}

/** `3 May`: where the year goes without saying. */
export function showShortDay(day: string): string {
  return onDay(day, { day: "numeric", month: "short" });
}

/** `14:05` of an instant, by the phone's own zone. */
export function showClock(instant: string | number): string {
  return at(instant, { hour: "2-digit", minute: "2-digit" });
}

/** `3 May, 14:05` of an instant, by the phone's own zone. */
export function showMoment(instant: string | number): string {
  return at(instant, { day: "numeric", month: "short", hour: "2-digit", minute: "2-digit" });
}

function onDay(day: string, parts: Intl.DateTimeFormatOptions): string {
  return new Intl.DateTimeFormat(language.value, { ...parts, timeZone: "UTC" }).format(new Date(`${day}T00:00:00Z`));
}

function at(instant: string | number, parts: Intl.DateTimeFormatOptions): string {
  return new Intl.DateTimeFormat(language.value, parts).format(new Date(instant));
}
