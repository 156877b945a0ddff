import { Button } from "../../parts/BigButton.tsx";
import { toast } from "../../parts/toast.ts";
import { putBack, type SavedRecord, takeBack, useRecords, useRole } from "../../store/book.ts";
import { me } from "../../store/place.ts";
import { showMoment } from "../../words/dates.ts";
import { t } from "../../words/index.ts";
import { About } from "../media/About.tsx";

/** What the rider, the scribe and the coach said about one record, oldest first. */
export function Notes({ about_id }: { about_id: string }) {
  const notes = useRecords("note", { about_id });
  const remarks = useRecords("remark", { about_id });
  const all = [...(notes ?? []), ...(remarks ?? [])].sort((a, b) => (a.recorded_at < b.recorded_at ? -1 : 1));
  if (!all.length) return null;
  return <ul class="notes">{all.map((note) => <One note={note} key={note.record_id} />)}</ul>;
}

function One({ note }: { note: SavedRecord<"note"> | SavedRecord<"remark"> }) {
  const mine = useRole() !== "reader" && note.kind === "note" && (note.author === null || note.author === me.value?.id);
  const remove = () => takeBack(note.record_id).then(
    () => toast(t("note.taken_back"), () => putBack(note.record_id)),
    () => toast(t("note.not_saved")),
  );
  const by = note.kind === "remark" ? t("note.by_coach", { name: note.author_name ?? "" }) : (note.author_name ?? "");
  return (
    <li class="card">
      <p class="notes__text">{note.body.text}</p>
      <p class="quiet">{by} · {showMoment(note.recorded_at)}</p>
      <About ids={[note.record_id]} what={t("kind.note")} folded={mine} only={!mine} home />
      {mine && <p><Button tone="quiet" onClick={() => void remove()}>{t("note.take_back")}</Button></p>}
    </li>
  );
}
