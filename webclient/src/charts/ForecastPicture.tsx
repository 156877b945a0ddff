// How a typical course might end, as bars: the longer, the likelier. Every bar carries its number, so that
// the picture needs no colour and a screen reader reads a table.

import type { Forecast } from "../board/standing.ts";
import { endings } from "../board/forecastRows.ts";
import { t } from "../words/index.ts";

export function ForecastPicture({ forecast }: { forecast: Forecast }) {
  const rows = endings(forecast);
  const most = Math.max(...rows.map((row) => row.chance));
  return (
    <table class="forecast">
      <caption class="quiet">{t("board.forecast_rows")}</caption>
      <tbody>
        {rows.map(({ ending, chance }) => (
          <tr key={ending}>
            <th scope="row">{endingWords(ending)}</th>
            <td class="forecast__cell">
              <svg class={ending === "not_completed" ? "forecast__bar forecast__bar--stop" : "forecast__bar"} viewBox="0 0 100 10" preserveAspectRatio="none" aria-hidden="true">
                <rect width={Math.max(1, (100 * chance) / most)} height="10" />
              </svg>
            </td>
            <td class="forecast__number">{t("board.forecast_chance", { percent: Math.round(100 * chance) })}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function endingWords(ending: number | "not_completed"): string {
  if (ending === "not_completed") return t("board.forecast_not_completed");
  return ending === 0 ? t("board.forecast_clear") : t("board.forecast_penalties", { penalties: ending });
}
