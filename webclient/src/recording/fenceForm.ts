// The fence form as typed, kept as plain data so that a killed page can take it up again, and the body it
// makes. Texts stay as typed; the value in cm stands beside them, so that changing the units on the way
// does not change what was measured.

import type { Ask, Element, Fence, Profile } from "../entries/bodies.ts";
import { ASKS_BY_PROFILE } from "./asks.ts";
import type { Letter } from "./combination.ts";
import { DIMENSIONS, withinLimits } from "./dimensions.ts";
import type { Dimension, Measured } from "./dimensions.ts";
import { NO_POSITION, type Position } from "./position.ts";

/** One measurement as typed. `value` null: empty; NaN cannot be kept in a draft, so what cannot be read is
 * `bad`. In cm for dimensions, in m for distances. */
export interface Typed {
  text: string;
  value: number | null;
  bad: boolean;
}

export interface PartForm {
  profile: Profile | null;
  asks: Ask[];
  /** Whether the person ticked the asks; until then they follow the profile. */
  asks_ticked: boolean;
  dimensions: Record<Dimension, Typed>;
}

export interface ElementForm extends PartForm {
  distance_to_next: Typed;
}

export interface FenceForm extends PartForm {
  label: string;
  elements: ElementForm[];
  favourite: boolean;
  notes: string;
}

export type Problem = { path: string; code: "empty" | "not_a_number" | "out_of_range" };

export const LETTERS: readonly Letter[] = ["A", "B", "C", "D", "E", "F"];
export const DISTANCE_LIMITS_M = [0.5, 60] as const;

export const NOT_MEASURED: Typed = { text: "", value: null, bad: false };

export function typed(text: string, parse: (text: string) => number | null): Typed {
  if (text.trim() === "") return { ...NOT_MEASURED, text };
  const value = parse(text);
  return value === null || !Number.isFinite(value) ? { text, value: null, bad: true } : { text, value, bad: false };
}

function emptyDimensions(): Record<Dimension, Typed> {
  return Object.fromEntries(DIMENSIONS.map((dimension) => [dimension, NOT_MEASURED])) as Record<Dimension, Typed>;
}

export function emptyElement(): ElementForm {
  return { profile: null, asks: [], asks_ticked: false, dimensions: emptyDimensions(), distance_to_next: NOT_MEASURED };
}

export function emptyForm(): FenceForm {
  const { distance_to_next: _, ...part } = emptyElement();
  return { ...part, label: "", elements: [], favourite: false, notes: "" };
}

/** Choosing a profile ticks what such a fence asks, unless the person already ticked. */
export function withProfile<F extends PartForm>(form: F, profile: Profile): F {
  return { ...form, profile, asks: form.asks_ticked ? form.asks : [...ASKS_BY_PROFILE[profile]] };
}

export function withAsk<F extends PartForm>(form: F, ask: Ask): F {
  const asks = form.asks.includes(ask) ? form.asks.filter((each) => each !== ask) : [...form.asks, ask];
  return { ...form, asks, asks_ticked: true };
}

export function withDimension<F extends PartForm>(form: F, dimension: Dimension, value: Typed): F {
  return { ...form, dimensions: { ...form.dimensions, [dimension]: value } };
}

export function withElement(form: FenceForm, at: number, element: ElementForm): FenceForm {
  return { ...form, elements: form.elements.map((each, index) => (index === at ? element : each)) };
}

/** One more element, a copy of the last one's profile; a single fence becomes A and B. */
export function addElement(form: FenceForm): FenceForm {
  if (form.elements.length >= LETTERS.length) return form;
  if (form.elements.length === 0) return { ...form, elements: [firstElement(form), emptyElement()] };
  return { ...form, elements: [...form.elements, emptyElement()] };
}

/** What was entered for the single fence becomes its element A. */
function firstElement(form: FenceForm): ElementForm {
  const { profile, asks, asks_ticked, dimensions } = form;
  return { profile, asks: asks.filter((ask) => ask !== "combination"), asks_ticked, dimensions, distance_to_next: NOT_MEASURED };
}

/** Without its second element a combination is a single fence again, with what A was. */
export function removeElement(form: FenceForm, at: number): FenceForm {
  const left = form.elements.filter((_, index) => index !== at);
  if (left.length > 1) return { ...form, elements: left };
  const { distance_to_next: _, ...part } = left[0] ?? emptyElement();
  return { ...form, ...part, elements: [] };
}

/** What still keeps the form from being saved, in the order of the screen. */
export function problemsOf(form: FenceForm): Problem[] {
  const label: Problem[] = form.label.trim() ? [] : [{ path: "label", code: "empty" }];
  const parts = form.elements.length > 0 ? form.elements.flatMap(elementProblems) : partProblems(form, "");
  return [...label, ...parts];
}

function elementProblems(element: ElementForm, at: number): Problem[] {
  const path = `elements.${at}.`;
  const distance = typedProblem(element.distance_to_next, `${path}distance_to_next`, (metres) => {
    return metres >= DISTANCE_LIMITS_M[0] && metres <= DISTANCE_LIMITS_M[1];
  });
  return [...partProblems(element, path), ...distance];
}

function partProblems(part: PartForm, path: string): Problem[] {
  const profile: Problem[] = part.profile ? [] : [{ path: `${path}profile`, code: "empty" }];
  const measures = DIMENSIONS.flatMap((dimension) => {
    return typedProblem(part.dimensions[dimension], path + dimension, (value_cm) => withinLimits(dimension, value_cm));
  });
  return [...profile, ...measures];
}

function typedProblem(entry: Typed, path: string, fits: (value: number) => boolean): Problem[] {
  if (entry.bad) return [{ path, code: "not_a_number" }];
  return entry.value === null || fits(entry.value) ? [] : [{ path, code: "out_of_range" }];
}

/** What the form says beside what it cannot show: the field, the place in the list, the position. */
export type Rest = Pick<Fence, "field_id" | "order"> & Position;

export const NO_REST: Rest = { field_id: null, order: null, ...NO_POSITION };

/** The body of a form without problems. A combination as a whole has the profile of its first element and
 * no dimensions of its own. */
export function bodyOf(form: FenceForm, rest: Rest): Fence {
  const combination = form.elements.length > 0;
  const measures = combination ? measuresOf(emptyDimensions()) : measuresOf(form.dimensions);
  const profile = combination ? form.elements[0]!.profile! : form.profile!;
  const asks: Ask[] = combination ? wholeAsks(form) : form.asks;
  const { label, favourite, notes } = form;
  const elements = form.elements.map(elementBody);
  return { ...measures, ...rest, label: label.trim(), profile, asks, elements, favourite, notes: notes.trim() || null };
}

/** Of the whole: that it is a combination, and the ways of riding it that the person ticked. */
function wholeAsks(form: FenceForm): Ask[] {
  const ways: Ask[] = form.asks.filter((ask) => ask === "bounce" || ask === "angled_line" || ask === "bending_line");
  return ["combination", ...ways];
}

function measuresOf(dimensions: Record<Dimension, Typed>): Measured {
  return Object.fromEntries(DIMENSIONS.map((dimension) => [dimension, dimensions[dimension].value])) as Measured;
}

function elementBody(form: ElementForm, at: number, all: readonly ElementForm[]): Element {
  const distance_to_next_m = at === all.length - 1 ? null : form.distance_to_next.value;
  return { ...measuresOf(form.dimensions), letter: LETTERS[at]!, profile: form.profile!, asks: form.asks, distance_to_next_m };
}

/** The form of a fence that is being changed; `show` and `showDistance` write values in the person's units. */
export function formOf(fence: Fence, show: (cm: number) => string, showDistance: (m: number) => string): FenceForm {
  const elements = fence.elements.map((element) => ({
    ...partOf(element, show),
    distance_to_next: shown(element.distance_to_next_m, showDistance),
  }));
  const { label, favourite } = fence;
  return { ...partOf(fence, show), label, favourite, notes: fence.notes ?? "", elements };
}

function partOf(part: Measured & { profile: Profile; asks: Ask[] }, show: (cm: number) => string): PartForm {
  const entries = DIMENSIONS.map((dimension) => [dimension, shown(part[dimension], show)]);
  return { profile: part.profile, asks: [...part.asks], asks_ticked: part.asks.length > 0, dimensions: Object.fromEntries(entries) };
}

function shown(value: number | null, show: (value: number) => string): Typed {
  return value === null ? NOT_MEASURED : { text: show(value), value, bad: false };
}

/** A draft read back, or null where it is not one of ours (an older version's, or damaged). */
export function formFromDraft(text: string): FenceForm | null {
  try {
    const form = JSON.parse(text) as FenceForm;
    return isForm(form) ? form : null;
  } catch {
    return null;
  }
}

function isForm(form: FenceForm): boolean {
  const known = typeof form?.label === "string" && Array.isArray(form.elements) && Array.isArray(form.asks);
  return known && [form, ...form.elements].every((part) => DIMENSIONS.every((name) => typeof part?.dimensions?.[name]?.text === "string"));
}
