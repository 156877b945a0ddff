import { useState } from "preact/hooks";

import { saidOf } from "../../board/outingTimeline.ts";
import { Button } from "../../parts/BigButton.tsx";
import { TextBox } from "../../parts/TextBox.tsx";
import { toast } from "../../parts/toast.ts";
import { save, takeBack, useDraft, useRecords, useRole, type SavedRecord } from "../../store/book.ts";
import { showMoment } from "../../words/dates.ts";
import { t } from "../../words/index.ts";

interface Props {
  /** Everything said about any of these stands here. */
  ids: string[];
  /** A new remark or note is about this one. */
  about: string;
  /** What that is, in words. */
  what: string;
}

/** What the rider noted and the coach remarked, and a way to say more. */
export function Said({ ids, about, what }: Props) {
  const [writing, setWriting] = useState(false);
  const notes = useRecords("note") ?? [];
  const remarks = useRecords("remark") ?? [];
  const role = useRole();
  const kind = role === "coach" ? "remark" : "note";
  const said = saidOf<SavedRecord<"note"> | SavedRecord<"remark">>([...notes, ...remarks], ids);
  return (
    <div class="timeline__said">
      {said.map((each) => <Words said={each} key={each.record_id} />)}
      {role !== "reader" && !writing && (
        <div><Button tone="quiet" label={t(`timeline.${kind}_on`, { what })} onClick={() => setWriting(true)}>{t(`timeline.${kind}`)}</Button></div>
      )}
      {writing && <SayForm kind={kind} about={about} what={what} done={() => setWriting(false)} />}
    </div>
  );
}

function Words({ said }: { said: SavedRecord<"note"> | SavedRecord<"remark"> }) {
  const by = said.kind === "remark" ? "timeline.by_coach" : "timeline.by";
  return (
    <div class={`said said--${said.kind}`}>
      <p class="said__text">{said.body.text}</p>
      <p class="said__by">{t(by, { name: said.author_name ?? "", moment: showMoment(said.recorded_at) })}</p>
    </div>
  );
}

function SayForm({ kind, about, what, done }: { kind: "note" | "remark"; about: string; what: string; done: () => void }) {
  const [text, setText, clear] = useDraft(`${kind}/${about}`);
  const keep = async (event: Event) => {
    event.preventDefault();
    if (!text.trim()) return;
    const { record_id } = await save(kind, { about_id: about, text: text.trim() });
    clear();
    toast(t("timeline.saved"), () => takeBack(record_id));
    done();
  };
  return (
    <form class="said__form" onSubmit={keep}>
      <TextBox label={t(`timeline.${kind}_on`, { what })} value={text} onInput={setText} lines={3} most={4000} />
      <div class="buttons">
        <Button tone="main" type="submit">{t("timeline.save")}</Button>
        <Button tone="quiet" onClick={done}>{t("frame.cancel")}</Button>
      </div>
    </form>
  );
}
