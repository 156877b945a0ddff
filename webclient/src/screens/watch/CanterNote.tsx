import { edit, type SavedRecord } from "../../store/book.ts";
import { t } from "../../words/index.ts";
import { KeptText } from "../note/KeptText.tsx";

export function CanterNote({ canter }: { canter: SavedRecord<"timed_canter"> }) {
  const keep = (note: string | null) => edit(canter, { note }).then(Boolean, () => false); // the frame says why
  return <KeptText draftKey={`canter note ${canter.record_id}`} said={canter.body.note} keep={keep} label={t("watch.note")} hint={t("watch.note_hint")} lines={2} most={2000} />;
}
