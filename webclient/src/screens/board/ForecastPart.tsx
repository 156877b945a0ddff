import type { Chances, Forecast, Likely } from "../../board/standing.ts";
import { ForecastPicture } from "../../charts/ForecastPicture.tsx";
import { Section } from "../../parts/Card.tsx";
import { Told } from "../../parts/Told.tsx";
import { t } from "../../words/index.ts";
import { toldAs, toldReason, toldWorkedOut, type Told as Words } from "../../words/told.ts";

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
        {PHASES.map((phase) => <><dt>{t(`board.forecast_phase_${phase}`)}</dt><dd>{likely(phases[phase], phase)}</dd></>)}
        <dt>{t("board.forecast_total")}</dt>
        <dd>{likely(forecast.total, "total")}</dd>
      </dl>
      {present && <p class="quiet">{presentWords(present)}</p>}
      {forecast.explanation && (
        <details>
          <summary class="more__summary">{t("finding.worked_out")}</summary>
          <p><Told of={toldWorkedOut(forecast)} /></p>
        </details>
      )}
    </div>
  );
}

function forecastWords(forecast: Forecast): Words {
  const { spoken, silence, text } = forecast;
  return spoken ? toldAs("forecast", percents(forecast), text) : silence ? toldReason(silence) : toldAs("no_forecast", {}, text);
}

function percents({ clear_chance = 0, clear_low = 0, clear_high = 0, elimination_chance = 0 }: Partial<Chances>) {
  const [clear, low, high, lost] = [clear_chance, clear_low, clear_high, elimination_chance].map((share) => Math.round(100 * share)) as [number, number, number, number];
  return { clear, low, high, lost };
}

function presentWords(present: Chances & { level_name: string }): string {
  const { total, level_name: level } = present;
  const said = t("board.forecast_present", { level, ...percents(present) });
  return total ? `${said} ${t("board.forecast_present_total", { ...total })}` : said;
}

/** What may be expected, or what it would take to say. */
function likely(range: Likely | null | undefined, what: (typeof PHASES)[number] | "total"): string {
  return range ? t("board.forecast_likely", { ...range }) : t("board.forecast_unknown", { needed: t(`board.forecast_needs_${what}`) });
}
