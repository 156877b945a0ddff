import { useState } from "preact/hooks";

import type { LevelRow } from "../../levels/rows.ts";
import type { Level, Rulebook } from "../../pace/levels.ts";
import { Button } from "../../parts/BigButton.tsx";
import { Told } from "../../parts/Told.tsx";
import { useRole } from "../../store/book.ts";
import { say, t } from "../../words/index.ts";
import { toldText } from "../../words/told.ts";
import { CorrectForm } from "./CorrectForm.tsx";
import { valueShown } from "./valueShown.ts";

interface Props {
  row: LevelRow;
  book: Rulebook;
  level: Level;
}

/** One value; its source and the way to correct it are one tap away. */
export function ValueRow({ row, book, level }: Props) {
  const [correcting, setCorrecting] = useState(false);
  const role = useRole();
  const { stated } = row;
  return (
    <details class="value">
      <summary class="value__line">
        <span class="value__name">{row.name}</span>
        <span class="value__number">{stated ? valueShown(stated.value, row.unit) : t("level.not_stated")}</span>
        <span class="value__grade">{stated ? say({ key: `level.grade_${stated.grade}` }) : t(`phase.${row.phase}`)}</span>
      </summary>
      <div class="value__source">
        {stated && <p><Told of={toldText(stated.source)} /></p>}
        {stated?.note && <p class="quiet">{t("level.note")} <Told of={toldText(stated.note)} /></p>}
        {(role === "rider" || role === "coach") && !correcting && (
          <div><Button onClick={() => setCorrecting(true)}>{t("level.correct")}</Button></div>
        )}
        {correcting && <CorrectForm row={row} book={book} level={level} done={() => setCorrecting(false)} />}
      </div>
    </details>
  );
}
