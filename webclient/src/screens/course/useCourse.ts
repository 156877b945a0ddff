// The course as typed, kept on the phone, and the card it makes.

import { useMemo } from "preact/hooks";

import { BadInput } from "../../pace/badInput.ts";
import { type CourseCard, courseCard } from "../../pace/course.ts";
import { courseSpeeds, type Level, type Rulebook, timeRules } from "../../pace/levels.ts";
import { useDraft } from "../../store/book.ts";
import { typedNumber } from "../results/numbers.ts";
import { useHorseRulebook } from "../watch/useSetUp.ts";
import { readFenceLines } from "./fenceLines.ts";

export interface CourseDraft {
  length: string;
  speed_mpm: number;
  rulebook_id: string | null;
  level_id: string | null;
  fences: string;
}

const FIRST: CourseDraft = { length: "", speed_mpm: 400, rulebook_id: null, level_id: null, fences: "" };

export type CourseTrouble = "length" | "fence";

export interface Course {
  draft: CourseDraft;
  change: (more: Partial<CourseDraft>) => void;
  rulebook: Rulebook | undefined;
  level: Level | null;
  /** The levels that state a speed. */
  levels: Level[];
  card: CourseCard | null;
  trouble: CourseTrouble | null;
  unread: string[];
}

function readDraft(text: string): CourseDraft {
  try {
    return { ...FIRST, ...(JSON.parse(text) as Partial<CourseDraft>) };
  } catch {
    return FIRST;
  }
}

interface Made {
  card: CourseCard | null;
  trouble: CourseTrouble | null;
}

/** The card of a draft under a level's rules, or what is wrong; neither while no length is typed. */
export function makeCard(draft: CourseDraft, level: Level | null): Made {
  const length = typedNumber(draft.length, 100, 10_000);
  if (length === undefined) return { card: null, trouble: null };
  if (length === null) return { card: null, trouble: "length" };
  try {
    return { card: courseCard(length, draft.speed_mpm, timeRules(level), readFenceLines(draft.fences).fences), trouble: null };
  } catch (error) {
    if (!(error instanceof BadInput)) throw error;
    return { card: null, trouble: error.field.startsWith("fences") ? "fence" : "length" };
  }
}

export function useCourse(): Course {
  const [kept, keep] = useDraft("course", JSON.stringify(FIRST));
  const draft = readDraft(kept);
  const rulebook = useHorseRulebook(draft.rulebook_id);
  const level = rulebook?.levels.find((one) => one.id === draft.level_id) ?? null;
  const made = useMemo(() => makeCard(draft, level), [kept, level]);
  return {
    draft, rulebook, level, ...made, unread: readFenceLines(draft.fences).unread,
    levels: (rulebook?.levels ?? []).filter((one) => courseSpeeds(one) !== null),
    change: (more) => keep(JSON.stringify({ ...draft, ...more })),
  };
}

