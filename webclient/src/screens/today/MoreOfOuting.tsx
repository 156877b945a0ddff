import { GOING } from "../../entries/bodies.ts";
import { Choices } from "../../parts/Choices.tsx";
import { TextBox } from "../../parts/TextBox.tsx";
import { t } from "../../words/index.ts";
import type { ChangeDraft, OutingDraft } from "./useNewOuting.ts";

const CONFIDENCES = ["1", "2", "3", "4", "5"] as const;

/** What can be said now or later in the outing: going, confidence, another day. */
export function MoreOfOuting({ draft, change }: { draft: OutingDraft; change: ChangeDraft }) {
  const confidence = draft.rider_confidence === null ? null : (String(draft.rider_confidence) as (typeof CONFIDENCES)[number]);
  const isDay = (date: string) => /^\d{4}-\d\d-\d\d$/.test(date);
  return (
    <details class="more">
      <summary class="more__summary">{t("today.more")}</summary>
      <div class="form">
        <Choices label={t("outing.going")} optional value={draft.going} choices={GOING.map((value) => ({ value, words: t(`going.${value}`) }))} onChoose={(going) => change({ going })} />
        <Choices
          label={t("outing.confidence")} optional value={confidence} choices={CONFIDENCES.map((value) => ({ value, words: t(`outing.confidence_${value}`) }))}
          onChoose={(value) => change({ rider_confidence: value === null ? null : Number(value) })}
        />
        <TextBox label={t("outing.date")} type="date" value={draft.date} onInput={(date) => isDay(date) && change({ date })} hint={t("today.date_hint")} />
        <label class="tick">
          <input type="checkbox" checked={draft.from_memory} onChange={() => change({ from_memory: !draft.from_memory })} />
          <span>{t("outing.from_memory")}</span>
        </label>
      </div>
    </details>
  );
}
