// A link may lead to a record of another of the person's logbooks: then that logbook is opened.

import { useEffect, useState } from "preact/hooks";

import { logbookId, openDb } from "../store/place.ts";
import { chooseLogbook, logbooks } from "./session.ts";

/** The id of the logbook of mine, other than the one on screen, that holds a record on this phone; or null. */
async function logbookOf(recordId: string): Promise<string | null> {
  for (const { id } of logbooks.value.filter((book) => book.id !== logbookId.value)) {
    if (await openDb.value?.records.get([id, recordId])) return id;
  }
  return null;
}

/** Opens the logbook that holds the record, if it is another one; true while looking. */
export function useElsewhere(recordId: string): boolean {
  const [looking, setLooking] = useState(true);
  useEffect(() => {
    void logbookOf(recordId).then((found) => (found ? chooseLogbook(found) : setLooking(false)));
  }, [recordId]);
  return looking;
}
