import { navigate } from "wouter-preact/use-browser-location";

import { chooseLogbook, logbooks } from "../../account/session.ts";
import { civilDate } from "../../entries/entry.ts";
import { byAttention, causeOf, type Fact } from "../../board/attention.ts";
import { Screen } from "../../parts/Screen.tsx";
import { useLive } from "../../store/live.ts";
import { me, openDb } from "../../store/place.ts";
import { showDay } from "../../words/dates.ts";
import { t } from "../../words/index.ts";
import "../../style/board.css";
import { factOf } from "./facts.ts";

/** A coach's riders, whoever needs attention first. */
export function Roster() {
  const books = logbooks.value.filter((book) => book.role !== "rider");
  const today = civilDate(new Date());
  const facts = useLive(
    () => Promise.all(books.map((book) => factOf(openDb.value!, book, me.value!, today))),
    [books.map((book) => book.id).join(), today],
  );
  return (
    <Screen title={t("roster.title")}>
      {facts?.length === 0 && <p class="empty">{t("roster.none")}</p>}
      <ul class="rows">{byAttention(facts ?? []).map((fact) => <RiderRow fact={fact} key={fact.logbook_id} />)}</ul>
    </Screen>
  );
}

function RiderRow({ fact }: { fact: Fact }) {
  const open = (address: string) => () => {
    chooseLogbook(fact.logbook_id);
    navigate(address);
  };
  return (
    <li class="row">
      <div class="row__link">
        <span class="row__words">
          <span class="row__title">{fact.title}</span>
          <span class="row__detail">{fact.last_outing ? t("roster.last_outing", { day: showDay(fact.last_outing) }) : t("roster.no_outing")}</span>
          <span>{t(`roster.cause_${causeOf(fact)}`, { n: fact.unanswered })}</span>
        </span>
        <span class="buttons">
          <button type="button" class="button" onClick={open("/")} aria-label={`${fact.title}: ${t("roster.outings")}`}>{t("roster.outings")}</button>
          <button type="button" class="button" onClick={open("/board")} aria-label={`${fact.title}: ${t("roster.board")}`}>{t("roster.board")}</button>
        </span>
      </div>
    </li>
  );
}
