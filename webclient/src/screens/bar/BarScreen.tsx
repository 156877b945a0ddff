import type { Standing } from "../../board/standing.ts";
import type { BarChange } from "../../entries/bodies.ts";
import { Button } from "../../parts/BigButton.tsx";
import { Section } from "../../parts/Card.tsx";
import { Screen } from "../../parts/Screen.tsx";
import { takeBack, useRecords, useRole, type SavedRecord } from "../../store/book.ts";
import { showDay } from "../../words/dates.ts";
import { t } from "../../words/index.ts";
import { askedTitle } from "../../words/told.ts";
import "../../style/board.css";
import { Missing } from "../board/Missing.tsx";
import { useStanding } from "../board/useStandingList.ts";
import { BarForm } from "./BarForm.tsx";
import { numberWords } from "./numberWords.ts";

/** What the bar of this level says and has been changed to, by whom and why; the coach changes it here. */
export function BarScreen({ params }: { params: { horseId: string; levelId: string } }) {
  const standing = useStanding(params.horseId, params.levelId);
  const role = useRole();
  const changes = useRecords("bar_change") ?? [];
  const back = `/board/${params.horseId}/${params.levelId}`;
  if (standing === null) return <Missing back={back} horseId={params.horseId} />;
  if (!standing) return <Screen title={t("board.bar")} back={back}>{null}</Screen>;
  const mine = changes.filter(({ body }) => body.rulebook_id === standing.rulebook_id && body.level_id === standing.level_id);
  return (
    <Screen title={t("bar.title", { level: standing.level_name })} back={back}>
      <p class="quiet">{t("bar.about")}</p>
      {role === "coach" ? <BarForm standing={standing} /> : <p class="quiet">{t("bar.coach_only")}</p>}
      <Section title={t("bar.changes")}>
        {mine.length === 0 && <p class="empty">{t("bar.no_changes")}</p>}
        <ul class="rows">{mine.map((change) => <Line change={change} standing={standing} may={role === "coach"} key={change.record_id} />)}</ul>
      </Section>
    </Screen>
  );
}

function valueOf({ quantity, value }: BarChange): string {
  if (quantity === "dropped") return value === 1 ? t("bar.change_dropped") : t("bar.change_default");
  return value === null ? t("bar.change_default") : String(value);
}

function Line({ change, standing, may }: { change: SavedRecord<"bar_change">; standing: Standing; may: boolean }) {
  const { body } = change;
  const finding = standing.findings.find((each) => each.requirement_id === body.requirement_id);
  const title = finding ? askedTitle(finding) : body.requirement_id;
  const words = t("bar.change_line", { requirement: title, number: numberWords(body.quantity), value: valueOf(body), reason: body.reason });
  return (
    <li class="row">
      <span class="row__link">
        <span class="row__words">
          <span>{words}</span>
          <span class="row__detail">{t("bar.by", { name: change.author_name ?? "", day: showDay(change.local_date) })}</span>
        </span>
        {may && <Button onClick={() => void takeBack(change.record_id)}>{t("bar.take_back")}</Button>}
      </span>
    </li>
  );
}
