// Where she should be at a time, in words: from the first flag, and against the nearest flag.

import { whereabouts } from "../../pace/markers.ts";
import type { Plan } from "../../pace/run.ts";
import { showDistance } from "../../units/index.ts";
import { t } from "../../words/index.ts";

const AT_M = 0.5;

/** “400 m from the first flag, 20 m before the second”; null without a target. */
export function whereWords(at_ms: number, { target_speed_mpm, distance_m, flags_m }: Plan): string | null {
  if (target_speed_mpm === null) return null;
  const { metres, flag, beyond_m } = whereabouts(at_ms / 1000, target_speed_mpm, distance_m, flags_m);
  const from = t("watch.where", { metres: showDistance(metres) });
  if (flag === 0) return from;
  const side = Math.abs(beyond_m) < AT_M ? "at" : beyond_m > 0 ? "past" : "before";
  const mark = flag === null ? t("watch.where_end") : t("watch.where_flag", { n: flag });
  return `${from}, ${t(`watch.where_${side}`, { metres: showDistance(Math.abs(beyond_m)), mark })}`;
}
