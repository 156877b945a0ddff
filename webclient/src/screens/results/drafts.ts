// The three results as they are typed, and the bodies they make. A draft is plain text and choices, so that
// it can be kept with every key and read back after a killed page.

import {
  EVENT_STATUSES, type EventResult, type EventResultInput, type EventStatus, type FlatworkTest, type FlatworkTestInput,
  type Jump, type JumpingRound, type JumpingRoundInput,
} from "../../entries/bodies.ts";
import { countsOf } from "./jumps.ts";
import { readMarks, writeMarks } from "./markSheet.ts";
import { type Bounds, orNull, wrong } from "./numbers.ts";

interface Common {
  horse_id: string | null;
  date: string;
  rulebook_id: string | null;
  level_id: string | null;
  outing_id: string | null;
  note: string;
}

export interface FlatworkDraft extends Common {
  test: string;
  by: "percent" | "marks";
  percent: string;
  marks: string;
  errors: number;
  judged: boolean;
}

export interface RoundDraft extends Common {
  by: "counts" | "jumps";
  jumps: Jump[];
  height_cm: number | null;
  efforts: number | null;
  knockdowns: number;
  refusals: number;
  combinations: number | null;
  rider_fall: boolean;
  horse_fall: boolean;
  completed: boolean;
  time_penalties: string;
  judged: boolean;
}

export const EVENT_NUMBERS = {
  dressage_penalties: { least: 0, most: 100 },
  show_jumping_jump_penalties: { least: 0, most: 200 },
  show_jumping_time_penalties: { least: 0, most: 200 },
  cross_country_jump_penalties: { least: 0, most: 400 },
  cross_country_time_penalties: { least: 0, most: 400 },
  cross_country_seconds_over: { least: -600, most: 1200, whole: true },
  place: { least: 1, most: 500, whole: true },
  starters: { least: 1, most: 500, whole: true },
} as const satisfies Record<string, Bounds>;
export type EventNumber = keyof typeof EVENT_NUMBERS;

export interface EventDraft extends Common {
  event: string;
  status: EventStatus;
  numbers: Record<EventNumber, string>;
  dangerous_riding: boolean;
  frangible_or_flag: number;
  rider_fall: boolean;
  horse_fall: boolean;
}

export interface Drafts {
  flatwork_test: FlatworkDraft;
  jumping_round: RoundDraft;
  event_result: EventDraft;
}
export type ResultKind = keyof Drafts;
export const RESULT_KINDS: readonly ResultKind[] = ["flatwork_test", "jumping_round", "event_result"];

export const PERCENT: Bounds = { least: 0, most: 100 };
export const TIME_PENALTIES: Bounds = { least: 0, most: 200 };

/** Words of `result.need_…`, or the name of a number that is wrong. */
export type Lacking = "horse" | "date" | "test" | "percent" | "marks" | "event" | "level" | "height" | "efforts" | "time_penalties" | EventNumber;

const text = (value: number | null): string => (value === null ? "" : String(value));
const noted = (note: string): string | null => (note.trim() === "" ? null : note.trim());

function common(date: string): Common {
  return { horse_id: null, date, rulebook_id: null, level_id: null, outing_id: null, note: "" };
}

export function blank(date: string): Drafts {
  const numbers = Object.fromEntries(Object.keys(EVENT_NUMBERS).map((name) => [name, ""])) as Record<EventNumber, string>;
  return {
    flatwork_test: { ...common(date), test: "", by: "percent", percent: "", marks: "", errors: 0, judged: true },
    jumping_round: {
      ...common(date), by: "counts", jumps: [], height_cm: null, efforts: null, knockdowns: 0, refusals: 0, combinations: null,
      rider_fall: false, horse_fall: false, completed: true, time_penalties: "", judged: false,
    },
    event_result: { ...common(date), event: "", status: "completed", numbers, dangerous_riding: false, frangible_or_flag: 0, rider_fall: false, horse_fall: false },
  };
}

export const DRAFT_OF = {
  flatwork_test: (body: FlatworkTest): FlatworkDraft => ({
    ...body, note: body.note ?? "", by: body.marks.length > 0 ? "marks" : "percent", percent: text(body.percent), marks: writeMarks(body.marks),
  }),
  jumping_round: (body: JumpingRound): RoundDraft => ({
    ...body, note: body.note ?? "", by: body.jumps.length ? "jumps" : "counts", rulebook_id: null, level_id: null, time_penalties: text(body.time_penalties),
  }),
  event_result: (body: EventResult): EventDraft => {
    const numbers = Object.fromEntries(Object.keys(EVENT_NUMBERS).map((name) => [name, text(body[name as EventNumber])]));
    return { ...body, note: body.note ?? "", numbers: numbers as Record<EventNumber, string> };
  },
};

function lacksCommon(draft: Common, today: string): Lacking[] {
  const lacking: Lacking[] = [];
  if (draft.horse_id === null) lacking.push("horse");
  if (!/^\d{4}-\d\d-\d\d$/.test(draft.date) || draft.date > today || draft.date < "1990-01-01") lacking.push("date");
  return lacking;
}

function lacksFlatwork(draft: FlatworkDraft): Lacking[] {
  const { marks, unread } = readMarks(draft.marks);
  const lacking: Lacking[] = draft.test.trim() === "" ? ["test"] : [];
  if (draft.by === "percent" && (draft.percent.trim() === "" || wrong(draft.percent, PERCENT))) lacking.push("percent");
  if (draft.by === "marks" && (marks.length === 0 || unread.length > 0)) lacking.push("marks");
  return lacking;
}

function lacksRound(draft: RoundDraft): Lacking[] {
  const lacking: Lacking[] = [];
  if (draft.height_cm === null) lacking.push("height");
  if (counted(draft).efforts === null) lacking.push("efforts");
  if (wrong(draft.time_penalties, TIME_PENALTIES)) lacking.push("time_penalties");
  return lacking;
}

function lacksEvent(draft: EventDraft): Lacking[] {
  const names = Object.keys(EVENT_NUMBERS) as EventNumber[];
  const lacking: Lacking[] = names.filter((name) => wrong(draft.numbers[name], EVENT_NUMBERS[name]));
  if (draft.event.trim() === "") lacking.push("event");
  if (draft.level_id === null) lacking.push("level");
  if (!EVENT_STATUSES.includes(draft.status)) lacking.push("event");
  return lacking;
}

/** What a draft still lacks, or has wrong; none when it can be saved. */
export function lacks<K extends ResultKind>(kind: K, draft: Drafts[K], today: string): Lacking[] {
  const own = { flatwork_test: lacksFlatwork, jumping_round: lacksRound, event_result: lacksEvent } as { [kind in ResultKind]: (draft: never) => Lacking[] };
  return [...lacksCommon(draft, today), ...own[kind](draft as never)];
}

/** The percentage is kept beside the marks: only the marks outlast an era, only the percentage is comparable. */
export function flatworkBody(draft: FlatworkDraft, percent_of_marks: number | null): Required<FlatworkTestInput> {
  const { horse_id, date, rulebook_id, level_id, outing_id, errors, judged } = draft;
  const marks = draft.by === "marks" ? readMarks(draft.marks).marks : [];
  const percent = draft.by === "marks" ? percent_of_marks : orNull(draft.percent, PERCENT);
  return { horse_id: horse_id ?? "", date, rulebook_id, level_id, outing_id, test: draft.test.trim(), percent, marks, errors, judged, note: noted(draft.note) };
}

/** The round as its jumps add up, where it is told fence by fence. */
export function counted(draft: RoundDraft): RoundDraft {
  if (draft.by === "counts") return { ...draft, jumps: [] };
  return draft.jumps.length ? { ...draft, ...countsOf(draft.jumps) } : { ...draft, efforts: null };
}

export function roundBody(told: RoundDraft): Required<JumpingRoundInput> {
  const draft = counted(told);
  const { rulebook_id: _, level_id: __, by: ___, ...kept } = draft;
  return {
    ...kept, horse_id: draft.horse_id ?? "", height_cm: draft.height_cm ?? 0, efforts: draft.efforts ?? 0,
    time_penalties: orNull(draft.time_penalties, TIME_PENALTIES), note: noted(draft.note),
  };
}

export function eventBody({ numbers, ...draft }: EventDraft): Required<EventResultInput> {
  const read = (name: EventNumber): number | null => orNull(numbers[name], EVENT_NUMBERS[name]);
  return {
    ...draft, horse_id: draft.horse_id ?? "", level_id: draft.level_id ?? "", event: draft.event.trim(), note: noted(draft.note),
    dressage_penalties: read("dressage_penalties"),
    show_jumping_jump_penalties: read("show_jumping_jump_penalties"), show_jumping_time_penalties: read("show_jumping_time_penalties"),
    cross_country_jump_penalties: read("cross_country_jump_penalties"), cross_country_time_penalties: read("cross_country_time_penalties"),
    cross_country_seconds_over: read("cross_country_seconds_over"), place: read("place"), starters: read("starters"),
  };
}

const TOTALLED: EventNumber[] = [
  "dressage_penalties", "show_jumping_jump_penalties", "show_jumping_time_penalties", "cross_country_jump_penalties", "cross_country_time_penalties",
];

/** The sum of the penalties given so far; `whole` once every phase has one. Null before the first. */
export function total(penalties: Partial<Record<EventNumber, number | null>>): { total: number; whole: boolean } | null {
  const given = TOTALLED.map((name) => penalties[name] ?? null).filter((one) => one !== null);
  if (given.length === 0) return null;
  return { total: Math.round(given.reduce((sum, one) => sum + one, 0) * 100) / 100, whole: given.length === TOTALLED.length };
}

/** A draft as kept while typing; anything unreadable or unknown to this version falls back to `otherwise`. */
export function readDraft<K extends ResultKind>(kept: string, otherwise: Drafts[K]): Drafts[K] {
  try {
    const read = JSON.parse(kept) as Record<string, unknown> | null;
    const known = Object.entries(read ?? {}).filter(([name]) => Object.hasOwn(otherwise, name));
    return { ...otherwise, ...Object.fromEntries(known) };
  } catch {
    return otherwise;
  }
}
