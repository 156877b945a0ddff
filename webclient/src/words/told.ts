// What the server says in plain English, in the language of the texts. Where a code and values come with it the
// words are made from them; a sentence that is always the same is looked up whole. What has no words here stays
// English and says so, for screen readers. The texts are in told.json of each language, which English needs not.

import type { Finding, LeftAlone, NextStep, PlanStep, Reason } from "../board/standing.ts";
import { showDay } from "./dates.ts";
import { decimal } from "./decimal.ts";
import { knows, say } from "./index.ts";
import { language } from "./language.ts";
import { inUnits } from "./units.ts";

export interface Told {
  words: string;
  /** Only where it is not that of the page. */
  lang?: "en";
}

/** A sentence without values; one that ends in somebody's own words, “…: {words}”, by its beginning. */
export function toldText(text: string): Told {
  if (english() || text === "") return { words: text };
  const alike = `like.${text.replace(NUMBER, "#")}`;
  if (knows(alike)) return { words: withNumbers(say({ key: alike }), text.match(NUMBER) ?? []) };
  const own = text.indexOf(": ") + 1;
  const [head, tail] = !knows(`said.${text}`) && own && knows(`said.${text.slice(0, own)}`) ? [text.slice(0, own), text.slice(own)] : [text, ""];
  return knows(`said.${head}`) ? { words: say({ key: `said.${head}` }) + tail } : { words: text, lang: "en" };
}

/** The same code may come with other values from another weigher, so the values' names belong to the key. Lengths
 * are said in the person's own units, but not those in somebody's own words, such as a fence's name. */
export function toldReason({ code, values, text }: Reason): Told {
  const key = ["told", code, ...Object.keys(values).sort()].join(".");
  const told = !english() && knows(key) ? { words: say({ key, values: shownValues(values) }) } : toldText(text);
  return OWN_WORDS.has(code) ? told : { ...told, words: inUnits(told.words) };
}

/** What was measured or ridden, as a short text: “Round at 95 cm”, “400 m at 400 m/min”. */
export function toldMeasured(text: string): Told {
  const told = toldText(text);
  return { ...told, words: inUnits(told.words) };
}

/** How a finding or a forecast is worked out, sentence by sentence; in English as the server said it. */
export function toldWorkedOut({ explanation = "", worked_out }: Pick<Finding, "explanation" | "worked_out">): Told {
  if (english() || !worked_out) return { words: inUnits(explanation), ...(english() ? {} : { lang: "en" }) };
  const said = worked_out.map((each) => toldReason({ ...each, text: UNKNOWN }));
  return said.some(({ words }) => words === UNKNOWN) ? { words: inUnits(explanation), lang: "en" } : { words: said.map(({ words }) => words).join(" ") };
}

/** Why the server would not, and what to do. */
export function toldFault({ code, message, fix }: { code: string; message: string; fix: string | null }): Told {
  return !english() && knows(`fault.${code}`) ? { words: say({ key: `fault.${code}` }) } : toldText([message, fix].filter(Boolean).join(" "));
}

/** A text made of values alone, such as a summary; the server's own where this language has no words for it. */
export function toldAs(key: string, values: Record<string, number>, text: string): Told {
  return !english() && knows(`told.${key}`) ? { words: say({ key: `told.${key}`, values }) } : toldText(text);
}

/** The name of a requirement. */
export function askedTitle({ requirement_id, title }: { requirement_id: string; title: string }): string {
  const key = `asked.${requirement_id}`;
  return !english() && knows(key) ? say({ key }) : title;
}

/** “Through water: one more clear.” */
export function toldStep({ text }: NextStep, finding: Finding | undefined): Told {
  const need = finding?.needs[0];
  if (!need || (english() && OWN_WORDS.has(need.code))) return { words: text };
  if (english()) return { words: inUnits(text) };
  const { words, lang } = toldReason(need);
  return lang ? { words: text, lang } : { words: `${askedTitle(finding)}: ${words}` };
}

/** “Ditch, uphill: 5 Open ditch, twice, uphill.” The part of the plan is said before it. */
export function toldPlanStep({ part, fence_id, label, times, presentation, text }: PlanStep, finding: Finding | undefined): Told {
  if (!fence_id) return toldText(text);
  if (part !== "work") return { words: label };
  if (english() || !finding) return { words: text };
  const met = Object.entries(presentation).map(([side, word]) => say({ key: `${side === "pace" ? "gait" : side}.${word}` }));
  return { words: `${askedTitle(finding)}: ${[label, `${times} ×`, ...met].join(", ")}` };
}

/** Why a question is left alone; which one comes first is told by its name. */
export function toldLeft({ text, first }: LeftAlone): Told {
  if (english() || !first) return toldText(text);
  return { words: say({ key: "told.first", values: { title: askedTitle({ requirement_id: first, title: first }) } }) };
}

const UNKNOWN = "?";
const NUMBER = /\d+(?:\.\d+)?/g;
const OWN_WORDS = new Set(["go", "not_yet", "hold", "measure", "unmeasured", "low_movements"]);

function withNumbers(words: string, numbers: readonly string[]): string {
  let place = 0;
  return words.replace(/#/g, () => decimal(numbers[place++]!));
}

const english = (): boolean => language.value.startsWith("en");
const SHARES = new Set(["lower_bound", "bound"]);

function shownValues(values: Record<string, unknown>): Record<string, string | number> {
  return Object.fromEntries(Object.entries(values).map(([name, value]) => [name, shown(name, value)]));
}

function shown(name: string, value: unknown): string | number {
  if (Array.isArray(value)) return value.join(", ");
  if (typeof value === "number") return SHARES.has(name) ? Math.round(100 * value) : Math.round(10 * value) / 10;
  return /^\d{4}-\d\d-\d\d$/.test(String(value)) ? showDay(String(value)) : String(value);
}
