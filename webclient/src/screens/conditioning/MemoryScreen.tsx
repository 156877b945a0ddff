import { useState } from "preact/hooks";
import { useLocation, useSearch } from "wouter-preact";

import { type Remembered, rememberedBody, today, troubles } from "../../conditioning/remembered.ts";
import { uuid7 } from "../../entries/uuid7.ts";
import { BigButton } from "../../parts/BigButton.tsx";
import { Choices } from "../../parts/Choices.tsx";
import { Screen } from "../../parts/Screen.tsx";
import { TextBox } from "../../parts/TextBox.tsx";
import { save, useDraft, useRecord, useRecords, useRole } from "../../store/book.ts";
import { useBusy } from "../../update/busy.ts";
import { t } from "../../words/index.ts";
import { SetSteppers } from "./PlanForm.tsx";
import { OWN } from "./useSetUp.ts";

/** An interval set that was not timed: written down afterwards, and marked so. Rates are added on its own screen. */
export function MemoryScreen() {
  useBusy();
  const asked = useRecord("outing", new URLSearchParams(useSearch()).get("outing") ?? "");
  const horses = useRecords("horse");
  const outings = useRecords("outing");
  const writes = useRole() !== "reader";
  const [, navigate] = useLocation();
  const [fresh_id] = useState(uuid7);
  const [text, setText, clear] = useDraft("set from memory");
  const [tried, setTried] = useState(false);
  if (!writes) return <Screen title={t("conditioning.memory_title")} back="/"><p>{t("conditioning.may_not")}</p></Screen>;
  if (!horses || !outings) return <Screen title={t("conditioning.memory_title")} back="/conditioning">{null}</Screen>;
  const only = horses.length === 1 ? horses[0]!.record_id : null;
  const first: Remembered = { horse_id: asked?.body.horse_id ?? only, date: asked?.body.date ?? today(), note: "", ...OWN };
  const draft = read(text, first);
  const change = (more: Partial<Remembered>): void => setText(JSON.stringify({ ...draft, ...more }));
  const lacking = tried ? troubles(draft) : [];
  const store = async (event: Event): Promise<void> => {
    event.preventDefault();
    setTried(true);
    const { horse_id, date } = draft;
    if (troubles(draft).length > 0 || horse_id === null) return;
    const same = outings.filter((one) => one.body.horse_id === horse_id && one.body.date === date);
    const there = same.find((one) => one.body.activity === "fitness") ?? same.at(-1);
    try {
      if (!there) await save("outing", { horse_id, date, activity: "fitness", from_memory: true }, fresh_id);
      const saved = await save("interval_set", rememberedBody(draft, there?.record_id ?? fresh_id));
      clear();
      navigate(`/conditioning/set/${saved.record_id}`, { replace: true });
    } catch {
      // the frame says why, and the draft is kept
    }
  };
  return (
    <Screen title={t("conditioning.memory_title")} back="/conditioning">
      <form class="form" onSubmit={(event) => void store(event)}>
        <Choices label={t("conditioning.horse")} value={draft.horse_id} choices={horses.map((one) => ({ value: one.record_id, words: one.body.name }))} onChoose={(horse_id) => change({ horse_id })} />
        {lacking.includes("need_horse") && <p class="text-box__trouble">{t("conditioning.no_pair")}</p>}
        <TextBox label={t("conditioning.day")} type="date" value={draft.date} onInput={(date) => change({ date })} trouble={lacking.includes("need_date") ? t("conditioning.need_date") : null} />
        <SetSteppers numbers={draft} change={change} />
        <TextBox label={t("conditioning.note")} value={draft.note} lines={2} most={2000} onInput={(note) => change({ note })} />
        <BigButton tone="main" type="submit">{t("conditioning.memory_save")}</BigButton>
      </form>
    </Screen>
  );
}

function read(text: string, first: Remembered): Remembered {
  try {
    return { ...first, ...(JSON.parse(text) as Remembered) };
  } catch {
    return first;
  }
}
