// A second copy of each entry made on this phone, in a file of its own in the browser's cache: should the database
// lose what it said it kept (see freshLog.ts), the next start puts it back. It goes when the server has answered for
// the entry. Where there is no cache (a page without https) there is no second copy.

import type { EntryRow, PhoneDb } from "./db.ts";
import { refold } from "./refold.ts";

type Keys = [logbook_id: string, id: string][];

const nameOf = (db: { name: string }): string => `${db.name}-unsent`;
const placeOf = ([logbook_id, id]: Keys[number]): string => `/unsent/${logbook_id}/${id}`;
const pathOf = ({ url }: Request): string => new URL(url).pathname;
const keyIn = ({ url }: Request): Keys[number] => url.split("/").slice(-2) as Keys[number];

/** Copies these entries. Nobody waits for it: they are on the disk already. */
export async function keepSpare(db: PhoneDb, logbook_id: string, ids: string[]): Promise<void> {
  if (!globalThis.caches) return;
  const rows = await db.entries.bulkGet(ids.map((id) => [logbook_id, id]));
  const spares = await caches.open(nameOf(db));
  for (const row of rows) if (row?.state === "here") await spares.put(placeOf([logbook_id, row.id]), new Response(JSON.stringify(row)));
}

/** The server has answered for these. */
export async function dropSpare(db: PhoneDb, logbook_id: string, ids: string[]): Promise<void> {
  await drop(db, ids.map((id) => [logbook_id, id]));
}

/** Puts back what has a copy and is not in the database; how many that were. */
export async function putBackLost(db: PhoneDb): Promise<number> {
  if (!globalThis.caches) return 0;
  const spares = await caches.open(nameOf(db));
  const requests = await spares.keys();
  const here = await db.entries.bulkGet(requests.map(keyIn));
  await drop(db, requests.map(keyIn).filter((_, at) => here[at] && here[at].state !== "here"));
  const lost = requests.filter((_, at) => !here[at]);
  const rows = (await Promise.all(lost.map((request) => readable(spares, request)))).filter((row) => row !== null);
  for (const logbook_id of new Set(rows.map((row) => row.logbook_id))) await putBack(db, logbook_id, rows.filter((row) => row.logbook_id === logbook_id));
  return rows.length;
}

/** The copies go with the store they belong to. */
export async function removeSpares(name: string): Promise<void> {
  await globalThis.caches?.delete(nameOf({ name }));
}

// one that cannot be read must not keep the others away
async function readable(spares: Cache, request: Request): Promise<EntryRow | null> {
  return (await spares.match(request))?.json().catch(() => null) ?? null;
}

function putBack(db: PhoneDb, logbook_id: string, rows: EntryRow[]): Promise<void> {
  return db.transaction(["entries", "records"], async (inside) => {
    await inside.entries.bulkPut(rows);
    await refold(inside, logbook_id, rows.map((row) => row.record_id));
  });
}

async function drop(db: PhoneDb, keys: Keys): Promise<void> {
  if (!keys.length || !globalThis.caches) return;
  const spares = await caches.open(nameOf(db));
  const gone = new Set(keys.map(placeOf));
  // asked first: of thousands that came from a file none has a copy
  await Promise.all((await spares.keys()).filter((request) => gone.has(pathOf(request))).map((request) => spares.delete(request)));
}
