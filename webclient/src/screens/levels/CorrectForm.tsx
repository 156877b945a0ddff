import { useState } from "preact/hooks";

import { readCorrection, type Trouble, troubleWith } from "../../levels/correction.ts";
import type { LevelRow } from "../../levels/rows.ts";
import type { Level, Rulebook } from "../../pace/levels.ts";
import { Button } from "../../parts/BigButton.tsx";
import { TextBox } from "../../parts/TextBox.tsx";
import { toast } from "../../parts/toast.ts";
import { save, takeBack, useRecords } from "../../store/book.ts";
import { t } from "../../words/index.ts";
import { unitShown, valueShown } from "./valueShown.ts";

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
  const where = { rulebook_id: book.id, level_id: level.id, phase: row.phase, quantity: row.quantity };
  const before = useRecords("rulebook_value")?.findLast(({ body }) => Object.entries(where).every(([key, at]) => body[key as keyof typeof where] === at));
  const number = readCorrection(value, row.unit);
  const missing = !edition.trim() || !article.trim();
  const trouble = troubleOf(row, book, number, troubleWith(book, { ...where, value: number, edition, article }));
  const keep = async (number: number | null) => {
    setTried(true);
    if (missing) return;
    const kept = await save("rulebook_value", { ...where, value: number, edition: edition.trim(), article: article.trim() }, before?.record_id);
    toast(t("level.corrected"), before ? undefined : () => takeBack(kept.record_id));
    done();
  };
  const submit = (event: Event) => {
    event.preventDefault();
    setTried(true);
    if (!trouble) void keep(number);
  };
  const label = row.unit === "cm" ? t("level.correct_height") : row.unit === "count" ? t("level.correct_count") : t("level.correct_to", { unit: unitShown(row.unit) });
  return (
    <form class="form card" onSubmit={submit}>
      <TextBox label={label} value={value} onInput={setValue} trouble={tried ? trouble : null} />
      <TextBox label={t("level.correct_edition")} value={edition} onInput={setEdition} most={120} />
      <TextBox label={t("level.correct_article")} value={article} onInput={setArticle} most={120} trouble={tried && missing ? t("level.correct_missing") : null} />
      <div class="buttons">
        <Button tone="main" type="submit">{t("level.correct_save")}</Button>
        {row.stated && <Button onClick={() => void keep(null)}>{t("level.correct_not_stated")}</Button>}
        {before && <Button onClick={() => void takeBack(before.record_id).then(done)}>{t("level.put_back")}</Button>}
        <Button tone="quiet" onClick={done}>{t("frame.cancel")}</Button>
      </div>
    </form>
  );
}

/** Why what was typed cannot be kept. */
function troubleOf({ phase, quantity, unit, stated }: LevelRow, book: Rulebook, number: number | null, trouble: Trouble | null): string | null {
  const known = book.quantities?.[phase]?.[quantity];
  if (number === null) return t("level.correct_not_number", { example: String(stated?.value ?? known?.most) });
  if (trouble !== "out_of_range" || !known) return trouble && t(`level.trouble_${trouble}`);
  const [least, most] = [known.least, known.most].map((value) => valueShown(value, unit));
  return t("level.correct_range", { least: least!, most: most! });
}
