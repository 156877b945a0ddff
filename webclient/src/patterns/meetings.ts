// One horse's attempts as the patterns see them: each with what was said of it, what the fence is, and where
// it stood in its outing.

import type { Ask, Attempt, Fence, Outing, Profile } from "../entries/bodies.ts";
import { asksOf } from "../recording/asks.ts";
import { inOrderMade, type Made, madeAt } from "../recording/made.ts";
import { isFall, isStop } from "../recording/outcomes.ts";
import { groupBy } from "./group.ts";

/** What this folder reads of the logbook. Fences by id; those not on this phone are absent. */
export interface History {
  outings: readonly Made<Outing>[];
  attempts: readonly Made<Attempt>[];
  fences: ReadonlyMap<string, Fence>;
}

/** Where an attempt stood in its outing; null where the order is not known (written down from memory). */
export interface Standing {
  first: boolean;
  after_trouble: boolean;
  /** In the last third; null in an outing too short to speak of one. */
  late: boolean | null;
}

export interface Meeting {
  attempt_id: string;
  /** The same for every meeting of one fence, or element, in one outing. */
  met_there: string;
  outing: Made<Outing>;
  attempt: Attempt;
  at_ms: number;
  /** A stop (refusal, run-out, circle) or a fall. */
  trouble: boolean;
  /** There was trouble at this fence earlier in the outing: how it is met now is an answer to that. */
  retry: boolean;
  profile: Profile | null;
  asks: readonly Ask[] | null;
  standing: Standing | null;
}

/** Fewer fences than this make no "late". */
export const FENCES_FOR_THIRDS = 6;

export function isTrouble({ outcome }: Attempt): boolean {
  return isStop(outcome) || isFall(outcome);
}

/** All meetings of the history, outing by outing, each in the order ridden. */
export function meetings({ outings, attempts, fences }: History): Meeting[] {
  const byOuting = groupBy(attempts, (attempt) => attempt.body.outing_id);
  return outings.flatMap((outing) => {
    const ridden = inOrderMade(byOuting.get(outing.record_id) ?? []);
    const standings = outing.body.from_memory ? null : standingsOf(ridden.map(({ body }) => body));
    const retries = retriesOf(ridden.map(({ body }) => body));
    return ridden.map((attempt, n) => ({
      attempt_id: attempt.record_id, met_there: metThere(attempt.body), outing, attempt: attempt.body, at_ms: madeAt(attempt), trouble: isTrouble(attempt.body),
      retry: retries[n]!,
      standing: standings?.[n] ?? null, ...kindOf(attempt.body, fences.get(attempt.body.fence_id)),
    }));
  });
}

function metThere({ outing_id, fence_id, element }: Attempt): string {
  return `${outing_id} ${fence_id} ${element ?? ""}`;
}

function retriesOf(ridden: readonly Attempt[]): boolean[] {
  const troubled = new Set<string>();
  return ridden.map((attempt) => {
    const retry = troubled.has(attempt.fence_id);
    if (isTrouble(attempt)) troubled.add(attempt.fence_id);
    return retry;
  });
}

/** Profile and asks of what was met: of the element where one is named, which is then also a combination. */
function kindOf({ element }: Attempt, fence: Fence | undefined): Pick<Meeting, "profile" | "asks"> {
  const part = element === null ? fence : fence?.elements.find(({ letter }) => letter === element);
  if (!fence || !part) return { profile: null, asks: null };
  const asks = asksOf(part);
  return { profile: part.profile, asks: element === null || asks.includes("combination") ? asks : [...asks, "combination"] };
}

/** Visits to fences: attempts in a row at one fence, elements and repeats included. */
function standingsOf(ridden: readonly Attempt[]): Standing[] {
  const visit: number[] = [];
  ridden.forEach((attempt, n) => void visit.push(n === 0 ? 0 : visit[n - 1]! + (ridden[n - 1]!.fence_id === attempt.fence_id ? 0 : 1)));
  const troubled = new Set(ridden.flatMap((attempt, n) => (isTrouble(attempt) ? [visit[n]!] : [])));
  const visits = (visit.at(-1) ?? -1) + 1;
  return visit.map((n) => ({
    first: n === 0,
    after_trouble: troubled.has(n - 1),
    late: visits < FENCES_FOR_THIRDS ? null : n >= visits - Math.floor(visits / 3),
  }));
}
