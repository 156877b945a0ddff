// The rider's emergency card. It lives in a little database of its own, which no account, no sync and no export
// ever looks into, and which opens before anybody signs in.

import { signal } from "@preact/signals";
import { type IDBPDatabase, openDB } from "idb";

export const CARD_LINES = ["name", "contacts", "allergies", "medication", "blood", "doctor", "insurance", "other"] as const;
export type CardLine = (typeof CARD_LINES)[number];
export type Card = Partial<Record<CardLine, string>>;

const STORE = "card";

/** undefined: not read yet. */
export const card = signal<Card | null | undefined>(undefined);
/** This browser refuses to store: the card lasts as long as the page. */
export const cardRefused = signal(false);

// not named like the accounts' own, which are looked through when the small settings were lost
const open = (): Promise<IDBPDatabase> => openDB("fieldtally.emergency-card", 1, { upgrade: (db) => void db.createObjectStore(STORE) });

/** Reads the card; null where there is none. */
export async function readCard(): Promise<void> {
  const kept = await inStore((db) => db.get(STORE, 1) as Promise<Card | undefined>);
  card.value ??= kept ?? null;
}

let keeping: Promise<void> | null = null;

/** Kept with every key: there is nothing to save. Null deletes it. Resolves when the newest is on the disk. */
export function keepCard(next: Card | null): Promise<void> {
  card.value = next;
  keeping ??= keepNewest().finally(() => (keeping = null));
  return keeping;
}

// a disk slower than the typing is given the newest only
async function keepNewest(): Promise<void> {
  let kept: Card | null;
  do await put((kept = card.value ?? null));
  while (kept !== (card.value ?? null));
}

async function put(next: Card | null): Promise<void> {
  await inStore(async (db) => {
    const change = db.transaction(STORE, "readwrite", { durability: "strict" });
    await (next ? change.store.put(next, 1) : change.store.delete(1));
    await change.done;
  });
}

async function inStore<T>(work: (db: IDBPDatabase) => Promise<T>): Promise<T | undefined> {
  try {
    const db = await open();
    return await work(db).finally(() => db.close());
  } catch {
    cardRefused.value = true;
    return undefined;
  }
}

/** The number to call in a line such as `Idris, 01234 567 890`; null where there is none. */
export function numberIn(line: string): string | null {
  const numbers = (line.match(/\+?\d[\d ()/.-]*\d/g) ?? []).map((found) => found.replace(/(?!^\+)\D/g, ""));
  const longest = numbers.sort((one, other) => other.length - one.length)[0];
  return longest && longest.length > 2 ? longest : null;
}
