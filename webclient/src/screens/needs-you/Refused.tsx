import { Section } from "../../parts/Card.tsx";
import { t } from "../../words/index.ts";
import { RefusedEntry } from "./RefusedEntry.tsx";
import { useEntries } from "./useEntries.ts";

/** What the server could not take: each with its reason, to be mended, exported or discarded. */
export function Refused() {
  const refused = useEntries("needs_you", 50);
  if (!refused?.count) return null;
  return (
    <Section title={t("needs.refused")}>
      <p class="quiet">{t("needs.refused_words")}</p>
      {refused.entries.map((entry) => <RefusedEntry entry={entry} key={entry.id} />)}
    </Section>
  );
}
