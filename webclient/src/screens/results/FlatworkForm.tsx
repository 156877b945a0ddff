import { useMemo } from "preact/hooks";

import { dressageScore, type DressageScore, penaltiesOf } from "../../pace/dressage.ts";
import { dressageRules } from "../../pace/levels.ts";
import { Choices } from "../../parts/Choices.tsx";
import { Stepper } from "../../parts/Stepper.tsx";
import { TextBox } from "../../parts/TextBox.tsx";
import { useRecords } from "../../store/book.ts";
import { t } from "../../words/index.ts";
import { HorseAndDay, JudgedChoice, LevelChoice, levelOf, NoteBox, useDraftRulebook } from "./Common.tsx";
import { type FlatworkDraft, PERCENT } from "./drafts.ts";
import { MarkPad } from "./MarkPad.tsx";
import { readMarks } from "./markSheet.ts";
import { orNull } from "./numbers.ts";
import type { ResultForm } from "./useResultForm.ts";

type Form = ResultForm<"flatwork_test">;

/** Percentage and penalties of what is typed so far; null while there is nothing to score. */
export function useFlatworkScore(draft: FlatworkDraft): DressageScore | null {
  const level = levelOf(useDraftRulebook(draft), draft.level_id);
  return useMemo(() => {
    const { marks } = readMarks(draft.marks);
    return draft.by === "marks" && marks.length > 0 ? dressageScore(marks, draft.errors, dressageRules(level)) : null;
  }, [draft.by, draft.marks, draft.errors, level]);
}

export function FlatworkForm({ form: { draft, change, lacking } }: { form: Form }) {
  const rulebook = useDraftRulebook(draft);
  const tests = useTests();
  const level = levelOf(rulebook, draft.level_id);
  const percent = orNull(draft.percent, PERCENT);
  return (
    <>
      <HorseAndDay draft={draft} change={change} lacking={lacking} />
      <TextBox
        label={t("result.test")} hint={t("result.test_hint")} value={draft.test} most={160} list={tests} onInput={(test) => change({ test })}
        trouble={lacking.includes("test") ? t("result.need_test") : null}
      />
      <LevelChoice optional rulebook={rulebook} level_id={draft.level_id} onChoose={(rulebook_id, level_id) => change({ rulebook_id, level_id })} />
      <Choices
        label={t("result.by")} value={draft.by} onChoose={(by) => by && change({ by })}
        choices={[{ value: "percent", words: t("result.by_percent") }, { value: "marks", words: t("result.by_marks") }]}
      />
      {draft.by === "percent" ? (
        <>
          <TextBox
            label={t("result.percent")} inputMode="decimal" value={draft.percent} most={8} onInput={(text) => change({ percent: text })}
            trouble={lacking.includes("percent") ? t("result.need_percent") : null}
          />
          {percent !== null && <Live percent={percent} penalties={penaltiesOf(percent, dressageRules(level))} />}
        </>
      ) : <Marks draft={draft} change={change} lacking={lacking} />}
      <JudgedChoice judged={draft.judged} onChoose={(judged) => change({ judged })} />
      <NoteBox note={draft.note} onInput={(note) => change({ note })} />
    </>
  );
}

function Marks({ draft, change, lacking }: Pick<Form, "draft" | "change" | "lacking">) {
  const { unread } = readMarks(draft.marks);
  const score = useFlatworkScore(draft);
  const trouble = unread.length > 0 ? t("result.marks_unread", { pieces: unread.join(" ") }) : lacking.includes("marks") ? t("result.need_marks") : null;
  return (
    <>
      <TextBox label={t("result.marks")} hint={t("result.marks_hint")} value={draft.marks} lines={2} inputMode="decimal" onInput={(marks) => change({ marks })} trouble={trouble} />
      <MarkPad line={draft.marks} onChange={(marks) => change({ marks })} />
      <Stepper label={t("result.errors")} value={draft.errors} step={1} from={0} least={0} most={3} show={String} onChange={(errors) => change({ errors })} />
      {score && <SheetLive score={score} n={readMarks(draft.marks).marks.length} leveled={draft.level_id !== null} />}
    </>
  );
}

function SheetLive({ score, n, leveled }: { score: DressageScore; n: number; leveled: boolean }) {
  return (
    <div class="live">
      {score.percent !== null && score.penalties !== null ? <Live percent={score.percent} penalties={score.penalties} /> : <p class="live__big">{t("result.eliminated")}</p>}
      <p class="quiet">{t("result.marks_live", { marks: score.sheet.marks, maximum: score.sheet.maximum, n })}</p>
      {score.errors_not_counted && <p class="quiet">{t(leveled ? "result.errors_not_counted" : "result.choose_level")}</p>}
    </div>
  );
}

const shown = (value: number): number => Math.round(value * 100) / 100;

function Live({ percent, penalties }: { percent: number; penalties: number }) {
  return (
    <output class="live">
      <span class="live__big">{t("result.percent_live", { percent: shown(percent) })}</span>{" "}
      <span>{t("result.penalties_live", { penalties: shown(penalties) })}</span>
    </output>
  );
}

/** Names of tests ridden before, the newest first: most are ridden again. */
function useTests(): string[] {
  const ridden = useRecords("flatwork_test");
  return useMemo(() => [...new Set([...(ridden ?? [])].reverse().map((one) => one.body.test))].slice(0, 20), [ridden]);
}
