// What is looked at: in each aspect, which sides a meeting stands on. Null: nobody said, so it is left out.

import { ASKS, COMPANIES, type Going, GROUNDS, LANDINGS, PACES, type Presentation, PROFILES, REINS, WAYS } from "../entries/bodies.ts";
import type { Meeting } from "./meetings.ts";

export interface Aspect {
  id: AspectId;
  family: Family;
  sidesOf: (meeting: Meeting) => readonly string[] | null;
  /** The sides worth asking about; null: whichever occur. */
  sides: readonly string[] | null;
  /** Says the same of a whole outing, so outings are counted and not fences. */
  of_outing?: true;
}

export const ASPECT_IDS = [
  "rein", "fence", "ask", "profile", "ground", "way", "landing", "company", "pace", "opening", "after_trouble", "late", "going",
] as const;
export type AspectId = (typeof ASPECT_IDS)[number];

/** The families among which the chance of speaking in vain is shared out (rule.ts). */
export type Family = "rein" | "kind" | "fence" | "manner" | "place";

function said(side: keyof Presentation, sides: readonly string[], family: Family = "manner"): Aspect {
  return { id: side, family, sides, sidesOf: ({ attempt }) => one(attempt.presentation[side]) };
}

const one = (word: string | null | undefined): readonly string[] | null => (word == null ? null : [word]);

/** Where in the outing: one side each; the other side is every other place. */
function placed(id: "opening" | "after_trouble" | "late", at: "first" | "after_trouble" | "late"): Aspect {
  return { id, family: "place", sides: [id], sidesOf: ({ standing }) => (standing === null || standing[at] === null ? null : standing[at] ? [id] : []) };
}

/** A study of horse falls at fences took good to soft, soft and heavy together (Equine Vet J 38(2):158, 2006). */
const FOOTING: Record<Going, string> = { firm: "hard", good_to_firm: "hard", good: "good", good_to_soft: "soft", soft: "soft", heavy: "soft" };

// The very fence stands before its kind: where only one fence is of a kind, it is that fence that is named.
export const ASPECTS: readonly Aspect[] = [
  said("rein", REINS, "rein"),
  { id: "fence", family: "fence", sides: null, sidesOf: ({ attempt }) => [attempt.fence_id] },
  { id: "ask", family: "kind", sides: ASKS, sidesOf: ({ asks }) => asks },
  { id: "profile", family: "kind", sides: PROFILES, sidesOf: ({ profile }) => one(profile) },
  said("ground", GROUNDS),
  said("way", WAYS),
  said("landing", LANDINGS),
  said("company", COMPANIES),
  said("pace", PACES),
  placed("opening", "first"),
  placed("after_trouble", "after_trouble"),
  placed("late", "late"),
  { id: "going", family: "place", sides: ["soft", "hard"], of_outing: true, sidesOf: ({ outing }) => one(outing.body.going && FOOTING[outing.body.going]) },
];
