import { useEffect, useState } from "preact/hooks";
import { Link } from "wouter-preact";

import { clearWhenSent, keepUnder, type Progress, progress } from "../../account/keep.ts";
import { chooseLogbook, logbooks, session } from "../../account/session.ts";
import { openOwnLogbook } from "../../account/sign.ts";
import { noteMistake } from "../../health/mistakes.ts";
import { BigButton, Button } from "../../parts/BigButton.tsx";
import { Choices } from "../../parts/Choices.tsx";
import { Notice } from "../../parts/Notice.tsx";
import { Screen } from "../../parts/Screen.tsx";
import { useLive } from "../../store/live.ts";
import { here, openDb } from "../../store/place.ts";
import { syncNow } from "../../sync/schedule.ts";
import { showDay } from "../../words/dates.ts";
import { t } from "../../words/index.ts";

/** What was recorded on this phone before anybody signed in, and the way to keep it under the account. */
export function KeepScreen() {
  const [done, setDone] = useState(0);
  const found = useLive(async () => ({ now: await progress(openDb.value!) }), [done]);
  const all = found?.now?.target && found.now.numbered === found.now.total;
  useEffect(() => {
    if (all) void clearWhenSent(openDb.value!).then((n) => setDone(n ?? 0));
  }, [all]);
  if (!found) return <Screen title={t("local.keep_title")} back="/">{null}</Screen>;
  const { now } = found;
  return (
    <Screen title={t("local.keep_title")} back="/">
      {now ? <><What now={now} /><Keeping now={now} /></> : <Notice tone="good" actions={<Link class="button button--main" href="/">{t("frame.to_today")}</Link>}><p>{done ? t("local.done", { n: done }) : t("local.gone")}</p></Notice>}
    </Screen>
  );
}

function What({ now: { total, horses, days } }: { now: Progress }) {
  return (
    <>
      <p>{t("local.what", { n: total })}</p>
      {horses.length > 0 && <p>{t("local.horses", { names: horses.join(", ") })}</p>}
      {days.length > 0 && <p>{t("local.days", { from: showDay(days[0]!), to: showDay(days.at(-1)!) })}</p>}
      <p class="quiet">{t("local.yours")}</p>
    </>
  );
}

function Keeping({ now: { total, numbered, target } }: { now: Progress }) {
  const mine = logbooks.value.filter((book) => book.role === "rider");
  const [chosen, choose] = useState<string | null>(mine.length === 1 ? mine[0]!.id : null);
  const [busy, setBusy] = useState<string | null>(null);
  const book = mine.find(({ id }) => id === (target?.logbook_id ?? chosen));
  if (target && target.account_id !== session.value!.account!.id) return <Notice tone="attention"><p>{t("local.other")}</p></Notice>;
  if (!mine.length) return <Notice tone="attention" actions={<Button onClick={() => void openOwnLogbook()}>{t("people.open_own")}</Button>}><p>{t("local.none")}</p></Notice>;
  const keep = async () => {
    chooseLogbook(book!.id);
    await keepUnder(here(), (done, all) => setBusy(t("local.moving", { done, total: all }))).catch(noteMistake);
    setBusy(null);
    await syncNow();
  };
  return (
    <>
      {!target && mine.length > 1 && <Choices label={t("local.into")} value={chosen} choices={mine.map(({ id, title }) => ({ value: id, words: title }))} onChoose={choose} />}
      {target && <p role="status">{t("local.numbered", { done: numbered, total })}</p>}
      {busy && <p role="status">{busy}</p>}
      {book && <BigButton tone="main" disabled={busy !== null} onClick={() => void keep()}>{target ? t("local.go_on") : t("local.keep", { name: book.title })}</BigButton>}
    </>
  );
}
