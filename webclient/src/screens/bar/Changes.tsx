import { Button } from "../../parts/BigButton.tsx";
import { Section } from "../../parts/Card.tsx";
import { type SavedRecord, takeBack } from "../../store/book.ts";
import { showDay } from "../../words/dates.ts";
import { t } from "../../words/index.ts";
import { askedTitle } from "../../words/told.ts";
import { counts, titleOf } from "./asked.ts";
import { newestFirst, shownNumber } from "./numbers.ts";
import { numberWords } from "./numberWords.ts";

/** Every change of this level's bar, newest first: two coaches' changes of one number both stand here. */
export function Changes({ changes, may }: { changes: readonly SavedRecord<"bar_change">[]; may: boolean }) {
  return (
    <Section title={t("bar.changes")}>
      {changes.length === 0 && <p class="empty">{t("bar.no_changes")}</p>}
      <ul class="rows">{newestFirst(changes).map((each) => <Line change={each} may={may} key={each.record_id} />)}</ul>
    </Section>
  );
}

function Line({ change, may }: { change: SavedRecord<"bar_change"> & { replaced: boolean }; may: boolean }) {
  const { body, number, replaced } = change;
  const said = [t("bar.by", { name: change.author_name ?? "", day: showDay(change.local_date) })];
  if (replaced) said.push(t("bar.replaced"));
  if (number === null) said.push(t("bar.waits"));
  return (
    <li class="row">
      <span class="row__link bar-change">
        <span class="row__words">
          <span class="row__title">{askedTitle({ requirement_id: body.requirement_id, title: titleOf(body.requirement_id) })}</span>
          <span>{body.quantity === "dropped" ? dropped(body.value) : `${numberWords(body.quantity)}: ${valueOf(body.quantity, body.value)}`}</span>
          <span>{t("bar.because", { reason: body.reason })}</span>
          <span class="row__detail">{said.join(" · ")}</span>
        </span>
        {may && <Button onClick={() => void takeBack(change.record_id)}>{t("bar.take_back")}</Button>}
      </span>
    </li>
  );
}

const dropped = (value: number | null): string => (value === 1 ? t("bar.n.dropped") : t("bar.change_default"));
const valueOf = (quantity: string, value: number | null): string => (value === null ? t("bar.change_default") : shownNumber(quantity, counts(quantity, value)));
