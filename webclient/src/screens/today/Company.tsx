import { Choices } from "../../parts/Choices.tsx";
import { Notice } from "../../parts/Notice.tsx";
import { t } from "../../words/index.ts";
import type { ChangeDraft, OutingDraft } from "./useNewOuting.ts";

/** Whether anybody is there to help. It stops nobody: it says what to do, and the coach sees the answer. */
export function Company({ draft: { accompanied }, change }: { draft: OutingDraft; change: ChangeDraft }) {
  return (
    <>
      <Choices
        label={t("today.company")} optional value={accompanied === null ? null : accompanied ? "yes" : "no"} onChoose={(said) => change({ accompanied: said === null ? null : said === "yes" })}
        choices={[{ value: "yes", words: t("today.with_somebody") }, { value: "no", words: t("today.alone") }]}
      />
      {accompanied === false && <Notice tone="attention" title={t("today.alone_title")} urgent><p>{t("today.alone_words")}</p></Notice>}
    </>
  );
}
