import type { Forecast, Likely } from "../../board/standing.ts";
import { ForecastPicture } from "../../charts/ForecastPicture.tsx";
import { Section } from "../../parts/Card.tsx";
import { Told } from "../../parts/Told.tsx";
import { t } from "../../words/index.ts";
import { toldAs, toldText, type Told as Words } from "../../words/told.ts";

const PHASES = ["dressage", "show_jumping", "time"] as const;

/** What a typical course of the level might bring, as a picture; or why nothing can be said yet. */
export function ForecastPart({ forecast }: { forecast: Forecast | null }) {
  if (!forecast) return null;
  return (
    <Section title={t("board.forecast")}>
      <p><Told of={forecastWords(forecast)} /></p>
      {forecast.spoken && <Spoken forecast={forecast} />}
    </Section>
  );
}

function Spoken({ forecast }: { forecast: Forecast }) {
  const { present_level: present, phases = {} } = forecast;
  return (
    <div class="card">
      <ForecastPicture forecast={forecast} />
      <dl class="facts">
        {PHASES.map((phase) => <><dt>{t(`board.forecast_phase_${phase}`)}</dt><dd>{likely(phases[phase])}</dd></>)}
        <dt>{t("board.forecast_total")}</dt>
        <dd>{likely(forecast.total)}</dd>
      </dl>
      {present && <p class="quiet">{t("board.forecast_present", { level: present.level_name, percent: Math.round(100 * present.clear_chance) })}</p>}
      {forecast.explanation && (
        <details>
          <summary class="more">{t("finding.worked_out")}</summary>
          <p><Told of={toldText(forecast.explanation)} /></p>
        </details>
      )}
    </div>
  );
}

function forecastWords({ spoken, clear_chance = 0, clear_low = 0, clear_high = 0, elimination_chance = 0, text }: Forecast): Words {
  const [clear, low, high, lost] = [clear_chance, clear_low, clear_high, elimination_chance].map((share) => Math.round(100 * share)) as [number, number, number, number];
  return toldAs(spoken ? "forecast" : "no_forecast", { clear, low, high, lost }, text);
}

function likely(range: Likely | null | undefined): string {
  return range ? t("board.forecast_likely", { expected: range.expected, low: range.low, high: range.high }) : t("board.forecast_unknown");
}
