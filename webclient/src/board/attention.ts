// Which rider a coach should look at first. Falls come before everything, then what the coach has not
// answered yet, then stops, then silence.

export interface Fact {
  logbook_id: string;
  title: string;
  last_outing: string | null;
  /** Outings after the coach's last remark or word. */
  unanswered: number;
  stops_in_last_outing: number;
  falls_in_last_outing: number;
  /** The coach's words that lapse within two weeks. */
  words_lapsing: number;
}

export type Cause = "fall" | "word_lapsing" | "unanswered" | "stops" | "quiet" | "nothing";

export function causeOf(fact: Fact): Cause {
  if (fact.falls_in_last_outing > 0 && fact.unanswered > 0) return "fall";
  if (fact.words_lapsing > 0) return "word_lapsing";
  if (fact.stops_in_last_outing > 0 && fact.unanswered > 0) return "stops";
  if (fact.unanswered > 0) return "unanswered";
  return fact.last_outing === null ? "quiet" : "nothing";
}

const ORDER: readonly Cause[] = ["fall", "word_lapsing", "stops", "unanswered", "nothing", "quiet"];

/** Whoever needs attention most comes first; among equals the latest outing. */
export function byAttention(facts: readonly Fact[]): Fact[] {
  return [...facts].sort(
    (a, b) =>
      ORDER.indexOf(causeOf(a)) - ORDER.indexOf(causeOf(b)) ||
      (b.last_outing ?? "").localeCompare(a.last_outing ?? "") ||
      a.title.localeCompare(b.title),
  );
}
