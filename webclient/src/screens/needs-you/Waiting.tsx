import { Described } from "../../describe/Described.tsx";
import { Section } from "../../parts/Card.tsx";
import { t } from "../../words/index.ts";
import { useEntries } from "./useEntries.ts";

const SHOWN = 20;

/** What is on this device only, until there is signal. */
export function Waiting() {
  const waiting = useEntries("here", SHOWN);
  if (!waiting) return null;
  const { entries, count } = waiting;
  return (
    <Section title={t("needs.waiting")}>
      {count === 0 && <p class="empty">{t("needs.waiting_none")}</p>}
      <ul class="points">
        {entries.map((entry) => <li key={entry.id}><Described entry={entry} />{entry.failures ? <> · {t("needs.putting_off")}</> : null}</li>)}
      </ul>
      {count > entries.length && <p>{t("needs.waiting_more", { n: count - entries.length })}</p>}
    </Section>
  );
}
