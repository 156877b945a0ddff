// Which levels admit a fence: every measurement against its own limit, nothing guessed. Twin of
// server/fieldtally/trade/fit.py, which says what each part means: same vectors (fixtures/contract/fit.json).

import type { Ask, Phase, Profile } from "../entries/bodies.ts";
import type { Level, Rulebook, StatedValue } from "../pace/levels.ts";
import { asksOf } from "../recording/asks.ts";
import type { Dimension } from "../recording/dimensions.ts";
import { rounded } from "../units/lengths.ts";
import { neededOf } from "./needed.ts";

export type Part = { letter?: string; profile: Profile; asks: readonly Ask[] } & { readonly [D in Dimension]?: number | null };
export type FenceParts = Part & { elements: readonly Part[] };

/** One measurement against one limit of one level, in cm; `part` is the element's letter, or "". */
export interface Check {
  part: string;
  dimension: Dimension;
  limit: string;
  measured_cm: number | null;
  limit_cm: number | null;
  margin_cm: number | null;
  verdict: "fits" | "too_big" | "not_measured" | "not_stated";
  grade: string | null;
}

/** `asks_later`: each ask that comes only at a higher level, with that level. */
export interface LevelFit {
  level: Level;
  verdict: "admitted" | Exclude<Check["verdict"], "fits">;
  binding: Check | null;
  checks: Check[];
  asks_later: { ask: Ask; level: Level }[];
}

export interface Fit {
  levels: LevelFit[];
  lowest_admitting: LevelFit | null;
  lowest_possible: LevelFit | null;
  binding: Check | null;
  asks_not_stated: Ask[];
}

type Limits = [Dimension, string[]][];

const PLAIN = ["brush_height_cm", "spread_top_cm", "spread_base_cm", "spread_without_height_cm", "drop_cm", "water_depth_cm"] as const;

function limitsOf(part: Part): [Phase, Limits] {
  const asks = asksOf(part);
  const { profile } = part;
  if (asks.includes("show_jump")) {
    const limits: Limits = [["height_cm", ["height_cm"]]];
    if (profile === "oxer") limits.push(["spread_top_cm", ["oxer_spread_cm"]]);
    if (profile === "triple_bar") limits.push(["spread_base_cm", ["triple_bar_spread_cm"]]);
    return ["show_jumping", limits];
  }
  const limits: Limits = [["height_cm", ["fixed_height_cm"]], ...PLAIN.map((name): Limits[number] => [name, [name]])];
  if (asks.includes("ditch")) limits[4]![1].push("ditch_width_cm");
  if ((profile === "step" || profile === "bank") && asks.includes("water")) limits[0]![1].push("step_height_cm");
  return ["cross_country", limits];
}

function compare(part: string, dimension: Dimension, limit: string, measured_cm: number | null, value: StatedValue | undefined): Check {
  const margin_cm = measured_cm === null || !value ? null : rounded(value.value - measured_cm, 2);
  const verdict = !value ? "not_stated" : margin_cm === null ? "not_measured" : margin_cm >= 0 ? "fits" : "too_big";
  return { part, dimension, limit, measured_cm, limit_cm: value?.value ?? null, margin_cm, verdict, grade: value?.grade ?? null };
}

/** A second limit that the rulebook does not state is passed over: the first one holds. */
function checksOf(part: Part, needed: readonly Dimension[], level: Level): Check[] {
  const [phase, limits] = limitsOf(part);
  return limits.flatMap(([dimension, names]) => {
    const measured = part[dimension] ?? null;
    if (measured === null && !needed.includes(dimension)) return [];
    return names.flatMap((name, place) => {
      const value = level.phases[phase]?.[name];
      return place === 0 || value ? [compare(part.letter ?? "", dimension, name, measured, value)] : [];
    });
  });
}

/** The whole of a combination must measure nothing. */
function checksAt(fence: FenceParts, level: Level): Check[] {
  const whole = checksOf(fence, fence.elements.length > 0 ? [] : neededOf(fence.profile), level);
  return [...whole, ...fence.elements.flatMap((element) => checksOf(element, neededOf(element.profile), level))];
}

function verdictOf(checks: readonly Check[]): LevelFit["verdict"] {
  const worst = (["too_big", "not_measured", "not_stated"] as const).find((verdict) => checks.some((check) => check.verdict === verdict));
  return worst ?? (checks.length > 0 ? "admitted" : "not_measured");
}

function tightest(checks: readonly Check[]): Check | null {
  return checks.reduce<Check | null>((tight, check) => (check.margin_cm !== null && (!tight || check.margin_cm < tight.margin_cm!) ? check : tight), null);
}

function allAsks(fence: FenceParts): Ask[] {
  const { elements, asks } = fence;
  const own = elements.length > 0 ? [...asks, ...(elements.length > 1 ? (["combination"] as const) : [])] : asksOf(fence);
  return [...new Set([...own, ...elements.flatMap(asksOf)])];
}

function introductions(rulebook: Rulebook): Map<Ask, Level> {
  return new Map([...rulebook.levels].reverse().flatMap((level) => (level.asks ?? []).map(({ word }) => [word, level])));
}

/** How a fence fits each level of a rulebook, lowest first. */
export function fit(fence: FenceParts, rulebook: Rulebook): Fit {
  const asks = allAsks(fence);
  const first = introductions(rulebook);
  const levels = rulebook.levels.map((level): LevelFit => {
    const checks = checksAt(fence, level);
    const asks_later = asks.flatMap((ask) => (first.has(ask) && first.get(ask)!.order > level.order ? [{ ask, level: first.get(ask)! }] : []));
    return { level, verdict: verdictOf(checks), binding: tightest(checks), checks, asks_later };
  });
  const start = levels.findLastIndex(({ verdict }) => verdict === "too_big") + 1;
  const open = levels.slice(start);
  const lowest_possible = open.find(({ binding }) => binding) ?? null;
  return {
    levels, lowest_possible, lowest_admitting: open.find(({ verdict }) => verdict === "admitted") ?? null,
    binding: (start > 0 ? levels[start - 1]! : lowest_possible)?.binding ?? null,
    asks_not_stated: asks.filter((ask) => !first.has(ask)),
  };
}
