import { edit, type SavedRecord } from "../../store/book.ts";
import { t } from "../../words/index.ts";
import { KeptText } from "../note/KeptText.tsx";

export function SetNote({ set }: { set: SavedRecord<"interval_set"> }) {
  const keep = (note: string | null) => edit(set, { note }).then(Boolean, () => false); // the frame says why
  return <KeptText draftKey={`set note ${set.record_id}`} said={set.body.note} keep={keep} label={t("conditioning.note")} hint={t("conditioning.note_hint")} lines={2} most={2000} />;
}
