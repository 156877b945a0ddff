// The state of a result's form: a draft that survives, what it lacks, and the way to save it.

import { useState } from "preact/hooks";

import type { Bodies } from "../../entries/bodies.ts";
import { civilDate } from "../../entries/entry.ts";
import { edit, save, type SavedRecord, useAsOpened, useDraft } from "../../store/book.ts";
import { blank, DRAFT_OF, type Drafts, type Lacking, lacks, readDraft, type ResultKind } from "./drafts.ts";

export interface ResultForm<K extends ResultKind> {
  draft: Drafts[K];
  change: (more: Partial<Drafts[K]>) => void;
  /** Only after a first try to save, so that an empty form does not scold. */
  lacking: Lacking[];
  /** Something half typed was found from before. */
  recovered: boolean;
  startAfresh: () => void;
  store: (body: (draft: Drafts[K]) => Bodies[K]) => Promise<string | null>;
}

/** `before`: the record that is edited; `given`: what is known from where the form was opened. */
export function useResultForm<K extends ResultKind>(kind: K, before: SavedRecord<K> | undefined, given: Partial<Drafts[K]>): ResultForm<K> {
  const today = civilDate(new Date());
  const first = before ? (DRAFT_OF[kind] as unknown as (body: Bodies[K]) => Drafts[K])(before.body) : { ...blank(today)[kind], ...given };
  const asOpened = useAsOpened(before);
  const firstText = JSON.stringify(first);
  const [kept, keep, clear] = useDraft(`result ${before?.record_id ?? `new ${kind}`}`, firstText);
  const [asked, setAsked] = useState(false);
  const [opened, setOpened] = useState<string | null>(null);
  const draft = readDraft<K>(kept, first);
  if (opened === null && kept !== firstText && kept !== "") setOpened(kept);
  const change = (more: Partial<Drafts[K]>): void => {
    setOpened((text) => text ?? "");
    keep(JSON.stringify({ ...draft, ...more }));
  };
  const store = async (body: (draft: Drafts[K]) => Bodies[K]): Promise<string | null> => {
    setAsked(true);
    if (lacks(kind, draft, today).length > 0) return null;
    const told = body(draft);
    const saved = await (asOpened ? edit(asOpened, told as never) : save(kind, told as never)).catch(() => null); // the frame says why
    if (saved !== null) clear();
    return saved?.record_id ?? null;
  };
  return {
    draft, change, store, recovered: opened !== null && opened !== "",
    lacking: asked ? lacks(kind, draft, today) : [],
    startAfresh: () => {
      clear();
      setOpened("");
      setAsked(false);
    },
  };
}
