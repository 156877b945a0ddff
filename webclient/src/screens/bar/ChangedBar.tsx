import type { Finding } from "../../board/standing.ts";
import { Section } from "../../parts/Card.tsx";
import { useRecords } from "../../store/book.ts";
import { showDay } from "../../words/dates.ts";
import { t } from "../../words/index.ts";
import { inForce, shownNumber } from "./numbers.ts";
import { numberWords } from "./numberWords.ts";

/** What the coach changed in this requirement's bar: by whom, when and why. Nothing where it is the default. */
export function ChangedBar({ finding }: { finding: Finding }) {
  const changes = inForce(finding.bar?.changes ?? []);
  const records = useRecords("bar_change") ?? [];
  if (!changes.length) return null;
  return (
    <ul class="reasons">
      {changes.map((change) => {
        const kept = records.find((each) => each.record_id === change.record_id);
        const [value, before] = [change.value, change.default].map((each) => (each === null ? "" : shownNumber(change.quantity, each)));
        return (
          <li key={change.record_id}>
            {t("bar.changed_line", { number: numberWords(change.quantity), value: value!, before: before!, reason: change.reason })}
            {kept && <span class="quiet"> {t("bar.by", { name: kept.author_name ?? "", day: showDay(kept.local_date) })}</span>}
          </li>
        );
      })}
    </ul>
  );
}

/** The same as a part of the finding's own screen. */
export function ChangedByCoach({ finding }: { finding: Finding }) {
  if (!inForce(finding.bar?.changes ?? []).length) return null;
  return <Section title={t("bar.changed_title")}><ChangedBar finding={finding} /></Section>;
}
