import { Section } from "../../parts/Card.tsx";
import { Choices } from "../../parts/Choices.tsx";
import { chooseLook, look, LOOKS, sunMode, toggleSunMode } from "../../style/theme.ts";
import { chooseUnits, units } from "../../units/index.ts";
import { chooseLanguage, t } from "../../words/index.ts";
import { choice, CHOICES } from "../../words/language.ts";

const SYSTEMS = ["metric", "imperial"] as const;

/** Units, language and look of this device; none of them follows from the others. */
export function ChoicesPart() {
  return (
    <Section title={t("settings.look")}>
      <Choices label={t("settings.look")} hideLabel value={look.value} choices={LOOKS.map((value) => ({ value, words: t(`settings.look_${value}`) }))} onChoose={(value) => value && chooseLook(value)} />
      <label class="tick">
        <input type="checkbox" checked={sunMode.value} onChange={toggleSunMode} />
        <span>{t("settings.sun")}</span>
      </label>
      <Choices label={t("settings.units")} value={units.value} choices={SYSTEMS.map((value) => ({ value, words: t(`settings.units_${value}`) }))} onChoose={(value) => value && chooseUnits(value)} />
      <Choices label={t("settings.language")} value={choice.value} choices={CHOICES.map((value) => ({ value, words: t(`settings.language_${value}`) }))} onChoose={(value) => value && void chooseLanguage(value).catch(() => location.reload())} />
      <p class="quiet">{t("settings.language_kept")}</p>
    </Section>
  );
}
