import { useEffect, useRef } from "preact/hooks";

import { Choices } from "../../parts/Choices.tsx";
import { Notice } from "../../parts/Notice.tsx";
import { t } from "../../words/index.ts";
import type { ChangeDraft, OutingDraft } from "./useNewOuting.ts";

/** Whether anybody is there to help. It stops nobody: it says what to do, and the coach sees the answer. */
export function Company({ draft: { accompanied }, change }: { draft: OutingDraft; change: ChangeDraft }) {
  const said = useRef<HTMLDivElement>(null);
  const alone = accompanied === false;
  useEffect(() => {
    if (alone) said.current?.scrollIntoView({ block: "center" }); // the start button would stand before it
  }, [alone]);
  return (
    <>
      <Choices
        label={t("today.company")} optional value={accompanied === null ? null : accompanied ? "yes" : "no"} onChoose={(answer) => change({ accompanied: answer === null ? null : answer === "yes" })}
        choices={[{ value: "yes", words: t("today.with_somebody") }, { value: "no", words: t("today.alone") }]}
      />
      {alone && <div ref={said}><Notice tone="attention" title={t("today.alone_title")} urgent><p>{t("today.alone_words")}</p></Notice></div>}
    </>
  );
}
