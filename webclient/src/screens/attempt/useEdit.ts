// Changing a record tap by tap: every change builds on the one before, even while that is still being saved.

import { useEffect, useRef, useState } from "preact/hooks";

import type { Bodies, KindName } from "../../entries/bodies.ts";
import { toast } from "../../parts/toast.ts";
import { edit, type SavedRecord } from "../../store/book.ts";
import { t } from "../../words/index.ts";

export type Change<K extends KindName> = (part: Partial<Bodies[K]>) => Promise<boolean>;

/** The body as it will be, and a way to change it; says whether the change is on the disk. */
export function useEdit<K extends KindName>(record: SavedRecord<K>): [Bodies[K], Change<K>] {
  const newest = useRef(record.body);
  const saving = useRef(0);
  const [, draw] = useState(0);
  useEffect(() => {
    if (saving.current) return;
    newest.current = record.body;
    draw((n) => n + 1);
  }, [record.body]);
  const change: Change<K> = async (part) => {
    const before = newest.current;
    newest.current = { ...before, ...part };
    draw((n) => n + 1);
    saving.current += 1;
    try {
      const after = newest.current;
      if (!(await edit({ ...record, body: before }, part))) throw new Error("it was taken back meanwhile");
      toast(t("attempt.changed"), () => void edit({ ...record, body: after }, before).catch(notKept));
      return true;
    } catch {
      newest.current = before;
      notKept();
      return false;
    } finally {
      saving.current -= 1;
      draw((n) => n + 1);
    }
  };
  return [newest.current, change];
}

const notKept = (): void => toast(t("attempt.not_changed"));
