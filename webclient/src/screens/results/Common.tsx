import type { Level, Rulebook } from "../../pace/levels.ts";
import { Choices } from "../../parts/Choices.tsx";
import { Notice } from "../../parts/Notice.tsx";
import { RulebookOptions } from "../../parts/RulebookOptions.tsx";
import { TextBox } from "../../parts/TextBox.tsx";
import { useRecord, useRecords, useRulebooks } from "../../store/book.ts";
import { inside, t } from "../../words/index.ts";
import { useHorseRulebook } from "../watch/useSetUp.ts";
import type { Lacking } from "./drafts.ts";

interface HorseAndDayProps {
  draft: { horse_id: string | null; date: string };
  change: (more: { horse_id?: string | null; date?: string }) => void;
  lacking: Lacking[];
}

export function HorseAndDay({ draft, change, lacking }: HorseAndDayProps) {
  const horses = useRecords("horse");
  if (horses?.length === 0) return <Notice tone="attention"><p>{t("result.no_horses")}</p></Notice>;
  return (
    <>
      <Choices
        label={t("result.horse")} value={draft.horse_id} choices={(horses ?? []).map((one) => ({ value: one.record_id, words: one.body.name }))}
        onChoose={(horse_id) => change({ horse_id })}
      />
      {lacking.includes("horse") && <p class="text-box__trouble" role="alert">{t("result.need_horse")}</p>}
      <TextBox
        label={t("result.date")} type="date" value={draft.date} onInput={(date) => change({ date })}
        trouble={lacking.includes("date") ? t("result.need_date") : null}
      />
    </>
  );
}

/** The rulebook a result is under: the one said, else the horse's. */
export function useDraftRulebook(draft: { horse_id: string | null; rulebook_id: string | null }): Rulebook | undefined {
  const horse = useRecord("horse", draft.horse_id ?? "");
  return useHorseRulebook(draft.rulebook_id ?? horse?.body.rulebook_id);
}

interface LevelChoiceProps {
  rulebook: Rulebook | undefined;
  level_id: string | null;
  optional?: boolean;
  onChoose: (rulebook_id: string | null, level_id: string | null) => void;
}

/** Rulebook and level; the horse's own rulebook is there already. */
export function LevelChoice({ rulebook, level_id, optional, onChoose }: LevelChoiceProps) {
  const all = useRulebooks() as Rulebook[] | undefined;
  return (
    <>
      <label class="text-box">
        <span class="text-box__label">{t("result.rulebook")}</span>
        <select value={rulebook?.id ?? ""} onChange={(event) => onChoose(event.currentTarget.value || null, null)}>
          {!rulebook && <option value="">…</option>}
          <RulebookOptions books={all ?? []} />
        </select>
      </label>
      {rulebook && (
        <Choices
          label={t("result.level")} value={level_id} optional={optional ?? false}
          choices={rulebook.levels.map((level) => ({ value: level.id, words: level.name }))}
          onChoose={(id) => onChoose(rulebook.id, id)}
        />
      )}
    </>
  );
}

export function levelOf(rulebook: Rulebook | undefined, level_id: string | null): Level | null {
  return rulebook?.levels.find((level) => level.id === level_id) ?? null;
}

export function JudgedChoice({ judged, onChoose }: { judged: boolean; onChoose: (judged: boolean) => void }) {
  return (
    <Choices
      label={t("result.judged")} value={judged ? "yes" : "no"} onChoose={(value) => onChoose(value === "yes")}
      choices={[{ value: "yes", words: t("result.judged_yes") }, { value: "no", words: t("result.judged_no") }]}
    />
  );
}

/** Which falls there were, and after one what comes first. */
export function FallsChoice({ rider_fall, horse_fall, onChoose }: { rider_fall: boolean; horse_fall: boolean; onChoose: (falls: { rider_fall: boolean; horse_fall: boolean }) => void }) {
  const value = rider_fall && horse_fall ? "both" : rider_fall ? "rider" : horse_fall ? "horse" : "none";
  const choices = [
    { value: "none", words: t("result.fall_none") },
    { value: "rider", words: t("result.rider_fall") },
    { value: "horse", words: t("result.horse_fall") },
    { value: "both", words: `${t("result.rider_fall")}, ${inside(t("result.horse_fall"))}` },
  ];
  return (
    <>
      <Choices
        label={t("result.falls")} value={value} choices={choices}
        onChoose={(chosen) => onChoose({ rider_fall: chosen === "rider" || chosen === "both", horse_fall: chosen === "horse" || chosen === "both" })}
      />
      {value !== "none" && <Notice tone="stop"><p>{t("result.after_fall")}</p></Notice>}
    </>
  );
}

export function NoteBox({ note, onInput }: { note: string; onInput: (note: string) => void }) {
  return <TextBox label={t("result.note")} value={note} lines={2} most={2000} onInput={onInput} />;
}
