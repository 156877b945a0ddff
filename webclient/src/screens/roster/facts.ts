// What the coach's phone knows of each rider, from the logbooks it has synced.

import type { LogbookInfo } from "../../account/session.ts";
import type { Fact } from "../../board/attention.ts";
import type { Attempt, Word } from "../../entries/bodies.ts";
import type { PhoneDb, RecordRow } from "../../store/db.ts";
import type { Person } from "../../store/place.ts";
import { findNewest, findRecords } from "../../store/read.ts";

const FALLS = ["rider_fall", "horse_fall"];
const STOPS = ["refusal", "run_out", "circle"];
const SOON_DAYS = 14;
const LOOK_BACK = 30;

/** One fact sheet a logbook, read from the phone alone. `today` is a civil day. */
export async function factOf(db: PhoneDb, book: LogbookInfo, me: Person, today: string): Promise<Fact> {
  const place = { db, logbook_id: book.id, me };
  const [outings, remarks, words] = await Promise.all([
    findNewest(place, "outing", LOOK_BACK), findRecords(place, "remark", {}), findRecords(place, "word", {}),
  ]);
  const answered = [...remarks, ...words].filter((row) => row.author === me.id).map((row) => row.recorded_at).sort().at(-1) ?? "";
  const last = outings[0];
  const attempts = last ? await findRecords(place, "attempt", { outing_id: last.record_id }) : [];
  return {
    logbook_id: book.id,
    title: book.title,
    last_outing: last?.day ?? null,
    unanswered: outings.filter((outing) => outing.recorded_at > answered).length,
    stops_in_last_outing: count(attempts, STOPS),
    falls_in_last_outing: count(attempts, FALLS),
    words_lapsing: words.filter((word) => lapsesSoon(word, today)).length,
  };
}

function count(attempts: RecordRow[], outcomes: string[]): number {
  return attempts.filter((row) => outcomes.includes((row.body as unknown as Attempt).outcome)).length;
}

function lapsesSoon(row: RecordRow, today: string): boolean {
  const until = (row.body as unknown as Word).expires_on;
  const limit = new Date(Date.parse(today) + SOON_DAYS * 86_400_000).toISOString().slice(0, 10);
  return until !== null && until >= today && until <= limit;
}
