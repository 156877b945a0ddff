import { Link } from "wouter-preact";

import { Icon } from "../../parts/Icon.tsx";
import { type SavedRecord, useRecord, useRecords } from "../../store/book.ts";
import { t } from "../../words/index.ts";
import { useBusy } from "../../update/busy.ts";

/** The way back into an outing that is under way. */
export function Continue({ outing }: { outing: SavedRecord<"outing"> }) {
  useBusy();
  const horse = useRecord("horse", outing.body.horse_id);
  const field = useRecord("field", outing.body.field_id ?? "");
  const attempts = useRecords("attempt", { outing_id: outing.record_id });
  const where = [field?.body.name, t(`activity.${outing.body.activity}`)].filter(Boolean).join(", ");
  return (
    <Link class="continue" href={`/outing/${outing.record_id}`}>
      <span class="continue__words">
        <span class="continue__title">{t("today.continue", { horse: horse?.body.name ?? t("today.some_horse") })}</span>
        <span>{where}</span>
        {attempts && <span>{t("today.attempts", { n: attempts.length })}</span>}
      </span>
      <Icon name="forward" />
    </Link>
  );
}
