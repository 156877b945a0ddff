import { useState } from "preact/hooks";
import { useLocation } from "wouter-preact";

import { BigButton } from "../../parts/BigButton.tsx";
import { NotHere } from "../../parts/NotHere.tsx";
import { Screen } from "../../parts/Screen.tsx";
import { TextBox } from "../../parts/TextBox.tsx";
import { toast } from "../../parts/toast.ts";
import { edit, save, type SavedRecord, useAsOpened, useDraft, useRecord, useWhetherHere } from "../../store/book.ts";
import { t } from "../../words/index.ts";
import "../../style/recording.css";

export function NewField() {
  return <FieldForm field={null} />;
}

export function EditField({ params }: { params: { id: string } }) {
  const whether = useWhetherHere("field", params.id);
  const field = useRecord("field", params.id);
  if (whether === "missing") return <NotHere />;
  return field ? <FieldForm field={field} key={field.record_id} /> : <p class="screen quiet">{t("field.loading")}</p>;
}

function FieldForm({ field }: { field: SavedRecord<"field"> | null }) {
  const [, navigate] = useLocation();
  const id = field?.record_id;
  const asOpened = useAsOpened(field);
  const [name, setName, clearName] = useDraft(`field ${id ?? "new"} name`, field?.body.name ?? "");
  const [notes, setNotes, clearNotes] = useDraft(`field ${id ?? "new"} notes`, field?.body.notes ?? "");
  const [nameless, setNameless] = useState(false);
  const keep = async () => {
    setNameless(!name.trim());
    if (!name.trim()) return;
    const body = { name: name.trim(), notes: notes.trim() || null };
    const saved = await (asOpened ? edit(asOpened, body) : save("field", body)).catch(() => null);
    if (!saved) return toast(t("field.not_saved"));
    clearName();
    clearNotes();
    navigate(`/field/${saved.record_id}`, { replace: true });
  };
  return (
    <Screen title={field?.body.name ?? t("field.new")} back={id ? `/field/${id}` : "/fields"}>
      <form class="form" onSubmit={(event) => { event.preventDefault(); void keep(); }}>
        <TextBox label={t("field.name")} value={name} onInput={setName} most={120} autoComplete="off" trouble={nameless ? t("field.name_missing") : null} />
        <TextBox label={t("field.notes")} hint={t("field.notes_hint")} value={notes} onInput={setNotes} most={4000} lines={4} />
        <BigButton tone="main" type="submit">{t("field.save")}</BigButton>
      </form>
    </Screen>
  );
}
