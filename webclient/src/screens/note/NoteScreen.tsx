import { useState } from "preact/hooks";
import { useSearchParams } from "wouter-preact";

import type { Attempt, Bodies, KindName } from "../../entries/bodies.ts";
import { BigButton } from "../../parts/BigButton.tsx";
import { goBack } from "../../parts/goBack.ts";
import { NotHere } from "../../parts/NotHere.tsx";
import { Screen } from "../../parts/Screen.tsx";
import { TextBox } from "../../parts/TextBox.tsx";
import { toast } from "../../parts/toast.ts";
import type { RecordRow } from "../../store/db.ts";
import { save, takeBack, useDraft, useRecord, useRole } from "../../store/book.ts";
import { useLive } from "../../store/live.ts";
import { here } from "../../store/place.ts";
import { findRecord } from "../../store/read.ts";
import { showDay } from "../../words/dates.ts";
import { inside, t } from "../../words/index.ts";
import "../../style/recording.css";
import { attemptName } from "../outing/names.ts";
import { Notes } from "./Notes.tsx";
import { Phrases } from "./Phrases.tsx";

/** A note on anything: what is typed is kept at every keystroke, and saved as a note by one tap. */
export function NoteScreen({ params }: { params: { id: string } }) {
  const [search] = useSearchParams();
  const found = useLive(async () => ({ row: await findRecord(here(), params.id) }), [params.id]);
  if (!found) return <p class="screen quiet">{t("note.loading")}</p>;
  if (!found.row?.body) return <NotHere />;
  return <About row={found.row} outing_id={search.get("outing")} />;
}

function About({ row, outing_id }: { row: RecordRow; outing_id: string | null }) {
  const fence = useRecord("fence", row.fence_id ?? "");
  const mayWrite = useRole() !== "reader";
  const back = outing_id ? `/outing/${outing_id}` : addressOf(row);
  return (
    <Screen title={t("note.title", { about: aboutWords(row, fence?.body) })} back={back}>
      <Notes about_id={row.record_id} />
      {mayWrite && <Write about_id={row.record_id} back={back} />}
    </Screen>
  );
}

function Write({ about_id, back }: { about_id: string; back: string }) {
  const role = useRole();
  const kind = role === "coach" ? "remark" : "note";
  const [text, setText, clear] = useDraft(`${kind}/${about_id}`);
  const [empty, setEmpty] = useState(false);
  const keep = async () => {
    setEmpty(!text.trim());
    if (!text.trim()) return;
    const saved = await save(kind, { about_id, text: text.trim() }).catch(() => null);
    if (!saved) return toast(t("note.not_saved"));
    clear();
    toast(t("note.saved"), () => takeBack(saved.record_id));
    goBack(back);
  };
  return (
    <form class="form" onSubmit={(event) => { event.preventDefault(); void keep(); }}>
      <TextBox label={t("note.text")} hint={t("note.hint")} value={text} onInput={setText} lines={4} most={4000} trouble={empty ? t("note.empty") : null} />
      <BigButton tone="main" type="submit">{t("note.save")}</BigButton>
      <Phrases onPick={(phrase) => setText(text ? `${text.trimEnd()}, ${inside(phrase)}` : phrase)} />
    </form>
  );
}

export function aboutWords(row: RecordRow, fence: Bodies["fence"] | undefined): string {
  const body = row.body as Record<string, string>;
  if (row.kind === "attempt") return attemptName(row.body as unknown as Attempt, fence);
  if (row.kind === "outing") return t("note.about_outing", { day: showDay(body.date!) });
  return body.label ?? body.name ?? t(`kind.${row.kind as KindName}`);
}

function addressOf(row: RecordRow): string {
  if (row.kind === "outing" || row.outing_id) return `/outing/${row.outing_id ?? row.record_id}`;
  return ["field", "fence"].includes(row.kind) ? `/${row.kind}/${row.record_id}` : "/";
}
