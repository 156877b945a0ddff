// One value of a body as a person reads it.

import { showDistance, showHeight } from "../units/index.ts";
import { showTime } from "../units/times.ts";
import { showDay } from "../words/dates.ts";
import { decimal } from "../words/decimal.ts";
import { knows, say, t } from "../words/index.ts";

/** The words' prefix for fields whose values are words of a vocabulary, where it is not the field's own name. */
const VOCABULARY: Record<string, string> = { pace: "gait", status: "event_status" };

/** A list longer than this is a trace's, and only its length is said. */
const MOST_SHOWN = 99;

export function fieldWords(field: string): string {
  const key = `body.${field}`;
  return knows(key) ? say({ key }) : field;
}

/** `value` of `field` in words; `name` puts the id of another record into words. */
export function showValue(field: string, value: unknown, name: (id: string) => string | null = () => null): string {
  if (value === null || value === undefined || value === "") return t("frame.not_said");
  if (typeof value === "boolean") return value ? t("settings.yes") : t("settings.no");
  if (Array.isArray(value) && value.length > MOST_SHOWN) return t("location.points", { n: value.length });
  if (Array.isArray(value)) return value.map((each) => showPart(field, each, name)).join("; ") || t("frame.not_said");
  return showPart(field, value, name);
}

function showPart(field: string, value: unknown, name: (id: string) => string | null): string {
  if (typeof value === "number") return showNumber(field, value);
  if (typeof value === "string") return showText(field, value, name);
  if (typeof value !== "object" || value === null) return String(value);
  const said = Object.entries(value).filter(([, inner]) => inner !== null && !(Array.isArray(inner) && !inner.length));
  return said.map(([inner, part]) => `${fieldWords(inner)} ${showValue(inner, part, name)}`).join(", ");
}

function showNumber(field: string, value: number): string {
  if (field.endsWith("_cm")) return showHeight(value);
  if (field.endsWith("_m")) return showDistance(value);
  if (field.endsWith("_mpm")) return `${decimal(value)} m/min`;
  if (field.endsWith("_ms")) return showTime(value);
  return field.endsWith("_s") ? showTime(value * 1000) : decimal(value);
}

function showText(field: string, value: string, name: (id: string) => string | null): string {
  if (field.endsWith("_id")) return name(value) ?? value;
  if (/^\d{4}-\d\d-\d\d$/.test(value)) return showDay(value);
  const key = `${VOCABULARY[field] ?? field.replace(/^asks$/, "ask")}.${value}`;
  return knows(key) ? say({ key }) : value;
}
