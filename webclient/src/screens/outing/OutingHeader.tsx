import { Link } from "wouter-preact";

import { showDay } from "../../words/dates.ts";
import { inside, t } from "../../words/index.ts";
import type { OutingView } from "./useOuting.ts";

/** Where, when and how it is today, in one or two lines. */
export function OutingHeader({ view, mayRecord }: { view: OutingView; mayRecord: boolean }) {
  const { outing, field, horse } = view;
  const { body } = outing;
  const facts = [
    showDay(body.date),
    t(`activity.${body.activity}`),
    body.going && t("outing.going_is", { going: inside(t(`going.${body.going}`)) }),
    body.rider_confidence && t("outing.confidence_is", { confidence: body.rider_confidence }),
    body.minutes_in_saddle && t("outing.minutes_are", { n: body.minutes_in_saddle }),
    body.from_memory && t("outing.from_memory_is"),
    body.closed && t("outing.finished"),
  ].filter(Boolean);
  return (
    <div class="outing-facts">
      <p>
        <strong>{horse?.body.name ?? t("outing.no_horse")}, {body.field_id ? (field?.body.name ?? t("outing.field_unknown")) : t("outing.no_field")}</strong>
        <span class="quiet">{facts.join(" · ")}</span>
      </p>
      {mayRecord && <Link class="button" href={`/outing/${outing.record_id}/details`}>{t("outing.details")}</Link>}
    </div>
  );
}
