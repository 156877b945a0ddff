import { useState } from "preact/hooks";

import type { Standing } from "../../board/standing.ts";
import { DECISIONS, type Decision } from "../../entries/bodies.ts";
import { Button } from "../../parts/BigButton.tsx";
import { Choices } from "../../parts/Choices.tsx";
import { TextBox } from "../../parts/TextBox.tsx";
import { toast } from "../../parts/toast.ts";
import { save, useDraft } from "../../store/book.ts";
import { t } from "../../words/index.ts";

/** Give the word: a decision, a reason, and until when it stands. What is half typed survives a closed tab. */
export function WordForm({ standing, done }: { standing: Standing; done: () => void }) {
  const [decision, setDecision] = useState<Decision>("not_yet");
  const [reason, setReason, clearReason] = useDraft(`word/${standing.horse_id}/${standing.level_id}`);
  const [expires, setExpires] = useState("");
  const [trouble, setTrouble] = useState<string | null>(null);
  const give = async (event: Event) => {
    event.preventDefault();
    if (!reason.trim()) return setTrouble(t("board.word_reason_missing"));
    const { horse_id, rulebook_id, level_id } = standing;
    await save("word", { horse_id, rulebook_id, level_id, decision, reason: reason.trim(), expires_on: expires || null });
    clearReason();
    toast(t("board.word_saved", { decision: t(`decision.${decision}`) }));
    done();
  };
  return (
    <form class="form card" onSubmit={give}>
      <Choices
        label={t("board.word_decision")} value={decision} onChoose={(chosen) => chosen && setDecision(chosen)}
        choices={DECISIONS.map((value) => ({ value, words: t(`decision.${value}`) }))}
      />
      <TextBox label={t("board.word_reason")} value={reason} onInput={setReason} lines={4} most={2000} trouble={trouble} />
      <TextBox label={t("board.word_expires")} value={expires} onInput={setExpires} type="date" />
      <div class="buttons">
        <Button tone="main" type="submit">{t("board.word_save")}</Button>
        <Button tone="quiet" onClick={done}>{t("frame.cancel")}</Button>
      </div>
    </form>
  );
}
