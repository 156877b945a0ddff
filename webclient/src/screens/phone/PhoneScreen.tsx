import { useEffect, useState } from "preact/hooks";

import { CopyDetails } from "../../health/CopyDetails.tsx";
import { Button } from "../../parts/BigButton.tsx";
import { Section } from "../../parts/Card.tsx";
import { Screen } from "../../parts/Screen.tsx";
import { t } from "../../words/index.ts";
import { platform } from "../help/platform.ts";
import { StoragePart } from "../settings/StoragePart.tsx";
import { buzz, soundCue, wakeSound } from "../watch/signals.ts";
import { ABILITIES, type Ability, type AbilityName, measure } from "./abilities.ts";

const TRIES: Partial<Record<AbilityName, () => void>> = {
  sound: () => {
    wakeSound();
    setTimeout(() => soundCue("minute"), 100);
  },
  vibration: () => buzz(300),
};

/** Each ability as this phone has it now, and what that means here. None decides whether records are kept. */
export function PhoneScreen() {
  const [found, setFound] = useState<Record<AbilityName, Ability> | null>(null);
  useEffect(() => void measure().then(setFound), []);
  return (
    <Screen title={t("phone.title")} back="/settings">
      <p>{t("phone.about")}</p>
      <dl class="facts">{found && ABILITIES.map((name) => [<dt key={name}>{t(`phone.${name}`)}</dt>, <dd key={`${name} is`}><Is name={name} is={found[name]} /></dd>])}</dl>
      {found?.install === "no" && <Section title={t("help.install_title")}><p>{t("help.install_why")}</p><p>{t(`help.install_${platform()}`)}</p></Section>}
      <StoragePart />
      <Section title={t("phone.details")}>
        <p class="quiet">{t("settings.details_words")}</p>
        <div class="buttons"><CopyDetails /></div>
      </Section>
    </Screen>
  );
}

function Is({ name, is }: { name: AbilityName; is: Ability }) {
  const attempt = TRIES[name];
  return (
    <>
      <strong>{t(`phone.is_${is}`)}</strong>{" "}
      {is !== "yes" && t(`phone.${name}_without`)}
      {is === "yes" && attempt && <Button onClick={attempt}>{t("phone.try")}</Button>}
    </>
  );
}
