import { useState } from "preact/hooks";
import { useLocation } from "wouter-preact";

import type { Horse } from "../../entries/bodies.ts";
import { BigButton, Button } from "../../parts/BigButton.tsx";
import { NotHere } from "../../parts/NotHere.tsx";
import { Screen } from "../../parts/Screen.tsx";
import { TextBox } from "../../parts/TextBox.tsx";
import { toast } from "../../parts/toast.ts";
import { edit, putBack, save, type SavedRecord, takeBack, useAsOpened, useDraft, useRecord, useRole, useWhetherHere } from "../../store/book.ts";
import { t } from "../../words/index.ts";
import { RulebookAndLevel } from "./RulebookAndLevel.tsx";

export function NewHorse() {
  return <HorseForm horse={null} />;
}

export function EditHorse({ params }: { params: { id: string } }) {
  const whether = useWhetherHere("horse", params.id);
  const horse = useRecord("horse", params.id);
  if (whether === "missing") return <NotHere />;
  return horse ? <HorseForm horse={horse} key={horse.record_id} /> : null;
}

type Rest = Pick<Horse, "birth_year" | "rulebook_id" | "present_level_id">;

function HorseForm({ horse }: { horse: SavedRecord<"horse"> | null }) {
  const id = horse?.record_id;
  const asOpened = useAsOpened(horse);
  const [, navigate] = useLocation();
  const [name, setName, clearName] = useDraft(`horse ${id ?? "new"} name`, horse?.body.name ?? "");
  const [changed, setChanged] = useState<Partial<Rest>>({});
  const [nameless, setNameless] = useState(false);
  const before = horse?.body;
  const rest: Rest = { birth_year: before?.birth_year ?? null, rulebook_id: before?.rulebook_id ?? null, present_level_id: before?.present_level_id ?? null, ...changed };
  const change = (part: Partial<Rest>) => setChanged((now) => ({ ...now, ...part }));
  const keep = async () => {
    setNameless(!name.trim());
    if (!name.trim()) return;
    const body = { ...rest, name: name.trim() };
    const saved = await (asOpened ? edit(asOpened, body) : save("horse", body)).catch(() => null);
    if (!saved) return;
    clearName();
    navigate("/", { replace: true });
  };
  return (
    <Screen title={before?.name ?? t("horse.new")} back="/">
      <form class="form" onSubmit={(event) => { event.preventDefault(); void keep(); }}>
        <fieldset class="form" disabled={useRole() !== "rider"}>
          <TextBox label={t("horse.name")} value={name} onInput={setName} most={80} autoComplete="off" trouble={nameless ? t("horse.name_missing") : null} />
          <RulebookAndLevel rulebook_id={rest.rulebook_id} level_id={rest.present_level_id} onChoose={(rulebook_id, present_level_id) => change({ rulebook_id, present_level_id })} />
          <TextBox label={t("horse.birth_year")} value={rest.birth_year === null ? "" : String(rest.birth_year)} onInput={(text) => change({ birth_year: yearIn(text) })} inputMode="numeric" most={4} />
          <BigButton tone="main" type="submit">{t("horse.save")}</BigButton>
          {horse && <Away horse={horse} />}
        </fieldset>
      </form>
    </Screen>
  );
}

function Away({ horse }: { horse: SavedRecord<"horse"> }) {
  const [, navigate] = useLocation();
  const remove = async () => {
    await takeBack(horse.record_id);
    toast(t("horse.taken_back", { name: horse.body.name }), () => putBack(horse.record_id));
    navigate("/", { replace: true });
  };
  return <p><Button tone="stop" onClick={() => void remove()}>{t("horse.take_back")}</Button></p>;
}

function yearIn(text: string): number | null {
  const year = Number(text);
  return /^\d{4}$/.test(text) && year >= 1990 && year <= new Date().getFullYear() ? year : null;
}
