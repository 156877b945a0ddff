import { useEffect, useRef } from "preact/hooks";

import { TextBox } from "../../parts/TextBox.tsx";
import { edit, type SavedRecord, useDraft } from "../../store/book.ts";
import { t } from "../../words/index.ts";

/** A note that needs no saving: half typed it is a draft, left it is an entry. */
export function CanterNote({ canter }: { canter: SavedRecord<"timed_canter"> }) {
  const [text, setText, clear] = useDraft(`canter note ${canter.record_id}`, canter.body.note ?? "");
  const finish = useRef(async (): Promise<void> => undefined);
  finish.current = async () => {
    const note = text.trim() === "" ? null : text.trim();
    if (note === canter.body.note) return;
    const done = await edit(canter, { note }).catch(() => null); // the frame says why
    if (done !== null) clear();
  };
  useEffect(() => () => void finish.current(), []);
  return (
    <div onFocusOut={() => void finish.current()}>
      <TextBox label={t("watch.note")} hint={t("watch.note_hint")} value={text} lines={2} most={2000} onInput={setText} />
    </div>
  );
}
