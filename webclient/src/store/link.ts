// The connection to the database and its transactions. Strict durability: a transaction is complete only when
// it is on the disk. Who looks at the tables is told after each one, in every tab.

import type { IDBPDatabase, IDBPObjectStore, IDBPTransaction } from "idb";

import { tellChanged } from "./changes.ts";

type Mode = "readonly" | "readwrite";
type Store = IDBPObjectStore<unknown, string[], string, IDBTransactionMode>;
type Transaction = IDBPTransaction<unknown, string[], Mode>;
type Work<T> = (stores: Store[]) => Promise<T>;

export interface Link {
  run<T>(tables: string[], mode: Mode, work: Work<T>): Promise<T>;
  together<T>(tables: string[], work: (link: Link) => Promise<T>): Promise<T>;
  close(): void;
  reopen(): Promise<void>;
}

export async function connect(open: () => Promise<IDBPDatabase<unknown>>, name: string): Promise<Link> {
  let db = await open();
  const begin = (tables: string[], mode: Mode) => db.transaction(tables, mode, { durability: "strict" }) as Transaction;
  return {
    // async: on a closed connection they reject like every other failure
    run: async (tables, mode, work) => whole(name, begin(tables, mode), (transaction) => work(storesOf(transaction, tables))),
    together: async (tables, work) => whole(name, begin(tables, "readwrite"), (transaction) => work(within(transaction))),
    close: () => db.close(),
    reopen: async () => {
      db.close();
      db = await open();
    },
  };
}

// inside a transaction everything takes part in it, further transactions too
function within(transaction: Transaction): Link {
  const link: Link = {
    run: (tables, _, work) => work(storesOf(transaction, tables)),
    together: (_, work) => work(link),
    close: () => undefined,
    reopen: async () => undefined,
  };
  return link;
}

// A page put aside while it writes keeps the tables locked for every later page (WebKit): it lets go at once. Its
// save fails as any other would, and what was tapped is taken up again.
const running = new Set<Transaction>();
globalThis.addEventListener?.("pagehide", ({ persisted }) => {
  if (persisted) for (const transaction of running) void abort(transaction);
});

async function whole<T>(name: string, transaction: Transaction, work: (transaction: Transaction) => Promise<T>): Promise<T> {
  running.add(transaction);
  transaction.done.catch(() => undefined).finally(() => running.delete(transaction)); // its failure is told below, once
  let result: T;
  try {
    result = await work(transaction);
  } catch (error) {
    await abort(transaction);
    throw error;
  }
  await transaction.done;
  if (transaction.mode === "readwrite") tellChanged(name, [...transaction.objectStoreNames]);
  return result;
}

async function abort(transaction: Transaction): Promise<void> {
  try {
    transaction.abort();
  } catch {
    // it has failed by itself already
  }
  await transaction.done.catch(() => undefined);
}

function storesOf(transaction: Transaction, tables: string[]): Store[] {
  return tables.map((table) => transaction.objectStore(table) as unknown as Store);
}
