// A fence's fit in the person's words and units.

import { showGap, showHeight } from "../../units/index.ts";
import { say, t } from "../../words/index.ts";
import type { Check, Fit, LevelFit } from "../../trade/fit.ts";

export function headline({ lowest_admitting, lowest_possible, binding, levels }: Fit): string {
  if (lowest_possible) return t(lowest_possible === lowest_admitting ? "fit.admits" : "fit.undecided", { level: lowest_possible.level.name });
  if (binding) return t("fit.too_big");
  const measured = levels.some(({ checks }) => checks.some(({ measured_cm }) => measured_cm !== null));
  return t(measured ? "fit.not_compared" : "fit.nothing_measured");
}

/** The highest level for which it is too big, and the limit that says so. */
export function whyNotLower({ levels }: Fit): { words: string; check: Check } | null {
  const below = levels.findLast(({ verdict }) => verdict === "too_big");
  if (!below) return null;
  const check = below.binding!;
  return { words: t("fit.too_big_for", { level: below.level.name, why: checkWords(check) }), check };
}

/** `B: Base spread 140 cm: 20 cm over the limit of 120 cm`. */
export function checkWords(check: Check): string {
  const { measured_cm, limit_cm, margin_cm, verdict } = check;
  const what = whatOf(check);
  if (verdict === "not_stated") return t("fit.not_stated", { what });
  const limit = showHeight(limit_cm!);
  if (margin_cm === null) return t("fit.not_measured", { what, limit });
  const key = margin_cm > 0 ? "fit.under" : margin_cm === 0 ? "fit.at" : "fit.over";
  return t(key, { what, size: showHeight(measured_cm!), gap: showGap(Math.abs(margin_cm)), limit });
}

/** Steps and ditches have a limit beside that of their dimension. */
function whatOf({ part, dimension, limit }: Check): string {
  const what = limit === "step_height_cm" || limit === "ditch_width_cm" ? t(`level.q.${limit}`) : say({ key: `fence.dimension.${dimension}` });
  return part ? t("fit.of_element", { letter: part, what }) : what;
}

/** What decides at a level: the least room, and what cannot be compared. */
export function levelWords({ binding, checks }: LevelFit): string {
  const open = checks.filter(({ verdict }) => verdict === "not_measured" || verdict === "not_stated");
  return (binding ? [binding, ...open] : open).map(checkWords).join("; ") || t("fit.nothing_measured");
}

export function laterWords({ level, asks_later }: LevelFit): string | null {
  if (asks_later.length === 0) return null;
  const asks = asks_later.map((later) => t("fit.from", { ask: t(`ask.${later.ask}`), level: later.level.name }));
  return t("fit.later", { level: level.name, asks: asks.join(", ") });
}
