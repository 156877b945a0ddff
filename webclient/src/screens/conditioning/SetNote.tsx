import { useEffect, useRef } from "preact/hooks";

import { TextBox } from "../../parts/TextBox.tsx";
import { edit, type SavedRecord, useDraft } from "../../store/book.ts";
import { t } from "../../words/index.ts";

/** A note that needs no saving: half typed it is a draft, left it is an entry. */
export function SetNote({ set }: { set: SavedRecord<"interval_set"> }) {
  const [text, setText, clear] = useDraft(`set note ${set.record_id}`, set.body.note ?? "");
  const finish = useRef(async (): Promise<void> => undefined);
  finish.current = async () => {
    const note = text.trim() === "" ? null : text.trim();
    if (note === set.body.note) return;
    const done = await edit(set, { note }).catch(() => null); // the frame says why
    if (done !== null) clear();
  };
  useEffect(() => () => void finish.current(), []);
  return (
    <div onFocusOut={() => void finish.current()}>
      <TextBox label={t("conditioning.note")} hint={t("conditioning.note_hint")} value={text} lines={2} most={2000} onInput={setText} />
    </div>
  );
}
