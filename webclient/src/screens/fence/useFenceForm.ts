// The form on the screen, kept on the phone at every change: a killed page takes it up again.

import { useMemo, useState } from "preact/hooks";

import type { Fence } from "../../entries/bodies.ts";
import { emptyForm, type FenceForm, formFromDraft, formOf } from "../../recording/fenceForm.ts";
import { useDraft } from "../../store/book.ts";
import { showDistance, showHeight } from "../../units/index.ts";

export interface FormState {
  form: FenceForm;
  change: (form: FenceForm) => void;
  /** Forget what was typed. */
  startAfresh: () => void;
  /** It stands here from an earlier visit. */
  recovered: boolean;
}

export function useFenceForm(draftKey: string, fence: Fence | null): FormState {
  const [text, setText, clear] = useDraft(draftKey);
  const [touched, setTouched] = useState(false);
  const start = useMemo(() => (fence ? formOf(fence, showHeight, showDistance) : emptyForm()), [fence]);
  const kept = useMemo(() => formFromDraft(text), [text]);
  const change = (form: FenceForm) => {
    setTouched(true);
    setText(JSON.stringify(form));
  };
  return { form: kept ?? start, change, startAfresh: clear, recovered: kept !== null && !touched };
}
