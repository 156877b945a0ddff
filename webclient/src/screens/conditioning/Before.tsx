import { Link } from "wouter-preact";

import { daysBetween } from "../../board/evidencePicture.ts";
import { riddenPhrase } from "../../conditioning/phrases.ts";
import { civilDate } from "../../entries/entry.ts";
import { Notice } from "../../parts/Notice.tsx";
import { showDay } from "../../words/dates.ts";
import { say, t } from "../../words/index.ts";
import type { LastSet, SetUp } from "./useSetUp.ts";

/** What to mind before a set: cautions first, then what the last one says. */
export function Before({ setUp: { fallen, outing, last } }: { setUp: SetUp }) {
  if (fallen && outing) return <Fallen outing_id={outing.record_id} />;
  return (
    <>
      <Notice tone="attention" title={t("conditioning.first_title")}>
        <ul class="bullets">
          <li>{t("conditioning.caution_ground")}</li>
          <li>{t("conditioning.caution_stop")}</li>
          <li>{t("conditioning.caution_coach")}</li>
          <li>{t("conditioning.caution_on")}</li>
          <li>{t("conditioning.caution_alone")}</li>
        </ul>
      </Notice>
      {last && <Last last={last} />}
    </>
  );
}

function Fallen({ outing_id }: { outing_id: string }) {
  return (
    <Notice tone="stop" title={t("conditioning.fall_title")} actions={<Link class="button" href={`/outing/${outing_id}`}>{t("conditioning.to_outing")}</Link>}>
      <p>{t("conditioning.fall")}</p>
    </Notice>
  );
}

function Last({ last: { set, date, state } }: { last: LastSet }) {
  const days = daysBetween(date, civilDate(new Date()));
  const when = days <= 0 ? t("conditioning.last_today") : t("conditioning.last_days", { n: days });
  return (
    <>
      {(state === "slow" || state === "call_vet") && (
        <Notice tone={state === "slow" ? "attention" : "stop"} title={t(`conditioning.last_${state}_title`)}><p>{t(`conditioning.last_${state}`)}</p></Notice>
      )}
      <p>
        <Link href={`/conditioning/set/${set.record_id}`}>{t("conditioning.last", { day: showDay(date), ridden: say(riddenPhrase(set.body.intervals)) })}</Link>
        {" "}{when}
      </p>
    </>
  );
}
