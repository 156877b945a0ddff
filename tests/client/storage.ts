// A phone's storage inside Node. IndexedDB comes from the fake-indexeddb package.

import "../../webclient/node_modules/fake-indexeddb/auto/index.mjs";

import { openPhoneDb } from "../../webclient/src/store/db.ts";
import type { Place } from "../../webclient/src/store/place.ts";

export const RIDER = { id: "11111111-1111-4111-8111-111111111111", display_name: "Rika" };
export const LOGBOOK = "22222222-2222-4222-8222-222222222222";

let opened = 0;

export async function newPlace(): Promise<Place> {
  const db = await openPhoneDb(`test-${process.pid}-${++opened}`);
  return { db, logbook_id: LOGBOOK, me: RIDER };
}
