import { useEffect } from "preact/hooks";

import { localBegun, lookForLocal, startLocal } from "../../account/local.ts";
import { Button } from "../../parts/BigButton.tsx";
import { Section } from "../../parts/Card.tsx";
import { t } from "../../words/index.ts";

/** The way in without any account, with no signal too. */
export function StartHere({ done }: { done: () => void }) {
  useEffect(() => void lookForLocal(), []);
  return (
    <Section title={t("local.title")}>
      <p>{t("local.about")}</p>
      <div class="buttons"><Button onClick={() => void startLocal().then(done)}>{localBegun.value ? t("local.open") : t("local.start")}</Button></div>
    </Section>
  );
}
