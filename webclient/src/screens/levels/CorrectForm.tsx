import { useState } from "preact/hooks";

import { readCorrection } from "../../levels/correction.ts";
import type { LevelRow } from "../../levels/rows.ts";
import type { Level, Rulebook } from "../../pace/levels.ts";
import { Button } from "../../parts/BigButton.tsx";
import { TextBox } from "../../parts/TextBox.tsx";
import { toast } from "../../parts/toast.ts";
import { save, takeBack, useRecords } from "../../store/book.ts";
import { t } from "../../words/index.ts";

interface Props {
  row: LevelRow;
  book: Rulebook;
  level: Level;
  done: () => void;
}

/** One value put right from the rulebook in somebody's hand, with the edition and article it was read in. */
export function CorrectForm({ row, book, level, done }: Props) {
  const [value, setValue] = useState("");
  const [edition, setEdition] = useState("");
  const [article, setArticle] = useState("");
  const [tried, setTried] = useState(false);
  const before = useRecords("rulebook_value")?.find(
    ({ body }) => body.rulebook_id === book.id && body.level_id === level.id && body.phase === row.phase && body.quantity === row.quantity,
  );
  const number = readCorrection(value, row.stated.unit);
  const missing = !edition.trim() || !article.trim();
  const keep = async (event: Event) => {
    event.preventDefault();
    setTried(true);
    if (number === null || missing) return;
    const where = { rulebook_id: book.id, level_id: level.id, phase: row.phase, quantity: row.quantity };
    const kept = await save("rulebook_value", { ...where, value: number, edition: edition.trim(), article: article.trim() }, before?.record_id);
    toast(t("level.corrected"), before ? undefined : () => takeBack(kept.record_id));
    done();
  };
  const label = row.stated.unit === "cm" ? t("level.correct_height") : t("level.correct_to", { unit: row.stated.unit });
  const notNumber = tried && number === null ? t("level.correct_not_number", { example: String(row.stated.value) }) : null;
  return (
    <form class="form card" onSubmit={keep}>
      <TextBox label={label} value={value} onInput={setValue} trouble={notNumber} />
      <TextBox label={t("level.correct_edition")} value={edition} onInput={setEdition} most={120} />
      <TextBox label={t("level.correct_article")} value={article} onInput={setArticle} most={120} trouble={tried && missing ? t("level.correct_missing") : null} />
      <div class="buttons">
        <Button tone="main" type="submit">{t("level.correct_save")}</Button>
        {before && <Button onClick={() => void takeBack(before.record_id).then(done)}>{t("level.put_back")}</Button>}
        <Button tone="quiet" onClick={done}>{t("frame.cancel")}</Button>
      </div>
    </form>
  );
}
