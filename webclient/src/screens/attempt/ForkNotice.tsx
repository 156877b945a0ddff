import { Button } from "../../parts/BigButton.tsx";
import { Notice } from "../../parts/Notice.tsx";
import { toast } from "../../parts/toast.ts";
import { type SavedRecord, settle } from "../../store/book.ts";
import { t } from "../../words/index.ts";
import { changeWords } from "./changeWords.ts";

/** Two edits that exclude each other: both are shown, one tap settles it. */
export function ForkNotice({ record }: { record: Pick<SavedRecord, "record_id" | "fork"> }) {
  const { fork } = record;
  if (!fork) return null;
  const choose = (body: (typeof fork.sides)[number]["body"]) => settle(record.record_id, body).catch(() => toast(t("attempt.not_changed")));
  return (
    <Notice tone="attention" title={t("attempt.fork_title")}>
      <p>{t("attempt.fork_words")}</p>
      <ul class="form">
        {fork.sides.map((side) => (
          <li key={side.entry_id}>
            <p>{side.body ? changeWords(fork.fields, side.body) : t("attempt.fork_gone")}</p>
            <Button onClick={() => void choose(side.body)}>{t("attempt.fork_choose")}</Button>
          </li>
        ))}
      </ul>
    </Notice>
  );
}
