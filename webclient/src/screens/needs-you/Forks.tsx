import { Section } from "../../parts/Card.tsx";
import { useLive } from "../../store/live.ts";
import { here } from "../../store/place.ts";
import { findForked } from "../../store/read.ts";
import { t } from "../../words/index.ts";
import { ForkCard } from "./ForkCard.tsx";

/** Records that two people, or two devices, changed without knowing of each other. */
export function Forks() {
  const forked = useLive(() => findForked(here()), []);
  if (!forked?.length) return null;
  return (
    <Section title={t("needs.forks")}>
      <p class="quiet">{t("needs.forks_words")}</p>
      {forked.map((row) => <ForkCard row={row} key={row.record_id} />)}
    </Section>
  );
}
