import type { Trace } from "../../entries/bodies.ts";
import { language } from "../../words/language.ts";
import { t } from "../../words/index.ts";

/** What a trace is called: its own name, else when it began, in the time of this phone. */
export function traceTitle({ name, started_at_ms }: Trace): string {
  if (name) return name;
  if (started_at_ms === null) return t("location.course");
  return new Intl.DateTimeFormat(language.value, { dateStyle: "medium", timeStyle: "short" }).format(started_at_ms);
}
