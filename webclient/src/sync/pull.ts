// Fetches what others wrote, page by page in number order. A page and the cursor behind it are stored in one
// transaction, so a cut connection or a killed page costs at most the page under way.

import type { Entry, Numbering } from "../entries/entry.ts";
import { setMeta } from "../store/db.ts";
import { type Cursor, readCursor } from "./cursor.ts";
import { entriesPath, type SyncContext } from "./context.ts";
import { storePage } from "./page.ts";
import { dataOf, LogChanged, SyncStop } from "./stop.ts";

export interface Page {
  log_id: string;
  last_number: number;
  entries: (Entry & Numbering & { number: number })[];
  more: boolean;
  server_time: string;
}

const PAGE_SIZE = 500;

/** Fetches everything above the cursor; ends early with SyncStop or LogChanged. */
export async function pullAll(context: SyncContext): Promise<void> {
  const start = await readCursor(context.db, context.logbook_id);
  for (let cursor = start, more = true; more; ) {
    const page = await nextPage(context, cursor);
    cursor = await storePage(context, page, cursor);
    context.progress("fetching", cursor.number - start.number, page.last_number - start.number);
    more = page.more;
  }
}

async function nextPage(context: SyncContext, cursor: Cursor): Promise<Page> {
  const asked_ms = context.now();
  const page = dataOf(await context.wire.get<Page>(`${entriesPath(context)}?after=${cursor.number}&limit=${PAGE_SIZE}`));
  if (!Array.isArray(page.entries)) throw new SyncStop("offline");
  if (cursor.log_id !== null && page.log_id !== cursor.log_id) throw new LogChanged(page.log_id);
  if (page.last_number < cursor.number) throw new LogChanged(page.log_id);
  if (page.more && !page.entries.length) throw new SyncStop("server_trouble");
  await noteSkew(context, page.server_time, asked_ms);
  return page;
}

// how far the phone's clock is off, for diagnostics only: no clock decides anything
async function noteSkew({ db, now }: SyncContext, server_time: string, asked_ms: number): Promise<void> {
  const skew_ms = Date.parse(server_time) - (asked_ms + now()) / 2;
  if (Number.isFinite(skew_ms)) await setMeta(db, "skew_ms", Math.round(skew_ms));
}
