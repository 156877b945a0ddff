// One table of the phone's database. Each call is a transaction of its own, unless the table was handed out by
// a transaction under way: then it takes part in that one.

import type { IDBPObjectStore } from "idb";

type Store = IDBPObjectStore<unknown, string[], string, IDBTransactionMode>;

/** Runs `work` on the object store, in whatever transaction there is. */
export type Reach = <T>(name: string, mode: "readonly" | "readwrite", work: (store: Store) => Promise<T>) => Promise<T>;

export interface FindOptions {
  most?: number;
  /** From the end of the range backwards. */
  newest?: boolean;
}

export class Table<Row, Key extends IDBValidKey> {
  name: string;
  #reach: Reach;

  constructor(name: string, reach: Reach) {
    this.name = name;
    this.#reach = reach;
  }

  get(key: Key): Promise<Row | undefined> {
    return this.#read((store) => store.get(key));
  }

  bulkGet(keys: Key[]): Promise<(Row | undefined)[]> {
    return this.#read((store) => Promise.all(keys.map((key) => store.get(key))));
  }

  toArray(): Promise<Row[]> {
    return this.#read((store) => store.getAll());
  }

  count(): Promise<number> {
    return this.#read((store) => store.count());
  }

  /** Rows in the order of `index` (null: of the key) whose key lies in `range`. */
  find(index: string | null, range: IDBKeyRange, { most, newest }: FindOptions = {}): Promise<Row[]> {
    return this.#read(async (store) => {
      const source = index === null ? store : store.index(index);
      if (!newest) return source.getAll(range, most);
      const rows: Row[] = [];
      let cursor = await source.openCursor(range, "prev");
      for (; cursor && rows.length < (most ?? Infinity); cursor = await cursor.continue()) rows.push(cursor.value);
      return rows;
    });
  }

  countOf(index: string, range: IDBKeyRange): Promise<number> {
    return this.#read((store) => store.index(index).count(range));
  }

  /** The different first parts of an index's keys, found by leaping over the rest. */
  leads(index: string): Promise<string[]> {
    return this.#read(async (store) => {
      const leads: string[] = [];
      let cursor = await store.index(index).openKeyCursor();
      while (cursor) {
        const [lead] = cursor.key as [string];
        leads.push(lead);
        cursor = await cursor.continue([lead, []]);
      }
      return leads;
    });
  }

  put(row: Row): Promise<void> {
    return this.#write((store) => store.put!(row));
  }

  /** Like put, but a row with this key that is there already is an error. */
  add(row: Row): Promise<void> {
    return this.#write((store) => store.add!(row));
  }

  bulkPut(rows: Row[]): Promise<void> {
    return this.#write((store) => Promise.all(rows.map((row) => store.put!(row))));
  }

  bulkAdd(rows: Row[]): Promise<void> {
    return this.#write((store) => Promise.all(rows.map((row) => store.add!(row))));
  }

  delete(key: Key): Promise<void> {
    return this.#write((store) => store.delete!(key));
  }

  bulkDelete(keys: Key[]): Promise<void> {
    return this.#write((store) => Promise.all(keys.map((key) => store.delete!(key))));
  }

  deleteRange(range: IDBKeyRange): Promise<void> {
    return this.#write((store) => store.delete!(range));
  }

  /** Changes every row whose key lies in `range`, in place. */
  modify(range: IDBKeyRange, change: (row: Row) => void): Promise<void> {
    return this.#write(async (store) => {
      for (let cursor = await store.openCursor(range); cursor; cursor = await cursor.continue()) {
        change(cursor.value);
        await cursor.update!(cursor.value);
      }
    });
  }

  #read<T>(work: (store: Store) => Promise<T>): Promise<T> {
    return this.#reach(this.name, "readonly", work);
  }

  #write(work: (store: Store) => Promise<unknown>): Promise<void> {
    return this.#reach(this.name, "readwrite", async (store) => void (await work(store)));
  }
}

/** Every key that begins with these parts; arrays sort behind all text and numbers. */
export function startingWith(...parts: (string | number)[]): IDBKeyRange {
  return IDBKeyRange.bound(parts, [...parts, []]);
}
