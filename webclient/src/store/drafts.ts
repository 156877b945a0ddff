// Typing that survives: whatever is half typed is on the disk within a third of a second.

import { useEffect, useRef, useState } from "preact/hooks";

import type { PhoneDb } from "./db.ts";
import { openDb } from "./place.ts";

const EVERY_MS = 300;

export type Draft = [text: string, setText: (text: string) => void, clear: () => void, flush: () => void];

/** Text kept under `key` until it is cleared; `flush` writes what still waits. `initial` is what stands there when
 * nothing is half typed: also once it was cleared, or a note just kept would look empty and be kept as empty when its
 * box is left again. */
export function useDraft(key: string, initial = ""): Draft {
  const [typed, setTyped] = useState<{ key: string; text: string | null } | null>(null);
  const writer = useRef<DraftWriter | null>(null);
  const db = openDb.value;
  useEffect(() => {
    if (!db) return;
    let shown = true;
    const mine = (writer.current = new DraftWriter(db, key));
    void db.drafts.get(key).then((row) => shown && row && setTyped((now) => (now?.key === key ? now : { key, text: row.text })));
    return () => {
      shown = false;
      mine.flush();
    };
  }, [db, key]);
  const setText = (text: string) => {
    setTyped({ key, text });
    writer.current?.write(text);
  };
  const clear = () => {
    setTyped({ key, text: null });
    writer.current?.write(null);
    writer.current?.flush();
  };
  return [(typed?.key === key ? typed.text : null) ?? initial, setText, clear, () => writer.current?.flush()];
}

/** Writes the newest text at once, then at most every 300 ms; null removes the draft. */
export class DraftWriter {
  db: PhoneDb;
  key: string;
  #waiting: string | null | undefined;
  #timer: ReturnType<typeof setTimeout> | undefined;

  constructor(db: PhoneDb, key: string) {
    this.db = db;
    this.key = key;
  }

  write(text: string | null): void {
    this.#waiting = text;
    if (this.#timer !== undefined) return;
    this.#put();
    this.#timer = setTimeout(() => {
      this.#timer = undefined;
      if (this.#waiting !== undefined) this.write(this.#waiting);
    }, EVERY_MS);
  }

  flush(): void {
    clearTimeout(this.#timer);
    this.#timer = undefined;
    if (this.#waiting !== undefined) this.#put();
  }

  #put(): void {
    const text = this.#waiting!;
    this.#waiting = undefined;
    const { db, key } = this;
    const work = async () => {
      if (text) await db.drafts.put({ key, text, saved_at_ms: Date.now() });
      else await db.drafts.delete(key);
    };
    work().catch((error) => console.error("a draft could not be kept", error));
  }
}
