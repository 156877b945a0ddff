// Records are kept as the release that wrote them read their entries. A newer one knows more kinds and more of each:
// what it reads otherwise is folded anew, once, before any screen looks.

import { KINDS } from "../entries/bodies.ts";
import { getMeta, type PhoneDb, setMeta } from "./db.ts";
import { refold } from "./refold.ts";

const KNOWN = "kinds_known";
const AT_ONCE = 500;

type Known = Record<string, number>;

const known = (): Known => Object.fromEntries(Object.entries(KINDS).map(([kind, { version }]) => [kind, version]));

/** Folds anew the records of kinds that this release reads otherwise than the last one here, and those it could not read. */
export async function catchUp(db: PhoneDb, now: Known = known()): Promise<void> {
  const before = (await getMeta<Known>(db, KNOWN)) ?? {};
  const changed = (kind: string): boolean => (before[kind] ?? 1) !== (now[kind] ?? 1);
  if (Object.keys(now).every((kind) => before[kind] === now[kind])) return;
  const rows = (await db.records.toArray()).filter(({ kind, shelf }) => shelf === "unread" || changed(kind));
  for (const logbook_id of new Set(rows.map((row) => row.logbook_id))) {
    const ids = rows.filter((row) => row.logbook_id === logbook_id).map((row) => row.record_id);
    for (let from = 0; from < ids.length; from += AT_ONCE) {
      await db.transaction(["entries", "records"], (inside) => refold(inside, logbook_id, ids.slice(from, from + AT_ONCE)));
    }
  }
  await setMeta(db, KNOWN, now);
}
