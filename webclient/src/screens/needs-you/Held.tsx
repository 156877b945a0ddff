import { Described } from "../../describe/Described.tsx";
import { Section } from "../../parts/Card.tsx";
import { t } from "../../words/index.ts";
import { useEntries } from "./useEntries.ts";

const SHOWN = 20;

/** What the server keeps but is too old to read. */
export function Held() {
  const held = useEntries("held", SHOWN);
  if (!held?.count) return null;
  return (
    <Section title={t("needs.held")}>
      <p class="quiet">{t("needs.held_words")}</p>
      <ul class="points">{held.entries.map((entry) => <li key={entry.id}><Described entry={entry} /></li>)}</ul>
      {held.count > SHOWN && <p>{t("needs.waiting_more", { n: held.count - SHOWN })}</p>}
    </Section>
  );
}
