// How a typical course might end, as bars: the longer, the likelier; hollow bars are the pair's present level. Every
// bar carries its number, so that the picture needs no colour and a screen reader reads a table.

import type { Forecast } from "../board/standing.ts";
import { endings, type Ending } from "../board/forecastRows.ts";
import { t } from "../words/index.ts";

export function ForecastPicture({ forecast }: { forecast: Forecast }) {
  const rows = endings(forecast);
  const most = Math.max(...rows.flatMap(({ chance, present = 0 }) => [chance, present]));
  return (
    <table class="forecast">
      <caption class="quiet">{t("board.forecast_rows")}</caption>
      {forecast.present_level && <Levels present={forecast.present_level.level_name} />}
      <tbody>
        {rows.map(({ ending, chance, present }) => (
          <tr key={ending}>
            <th scope="row">{endingWords(ending)}</th>
            <td class="forecast__cell" aria-hidden="true">
              <Bar share={chance / most} look={ending === "not_completed" ? "stop" : "here"} />
              {present !== undefined && <Bar share={present / most} look="present" />}
            </td>
            <td class="forecast__number">{percentWords(chance)}</td>
            {present !== undefined && <td class="forecast__number forecast__number--present">{percentWords(present)}</td>}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function Levels({ present }: { present: string }) {
  return (
    <thead>
      <tr class="quiet">
        <td colSpan={2} />
        <th scope="col" class="forecast__number"><Bar share={1} look="here" />{t("board.forecast_here")}</th>
        <th scope="col" class="forecast__number"><Bar share={1} look="present" />{present}</th>
      </tr>
    </thead>
  );
}

function Bar({ share, look }: { share: number; look: "here" | "stop" | "present" }) {
  return (
    <svg class={`forecast__bar forecast__bar--${look}`} viewBox="0 0 100 10" preserveAspectRatio="none" aria-hidden="true">
      <rect width={Math.max(1, 100 * share)} height="10" />
    </svg>
  );
}

/** A chance that is not nought is never written as nought. */
function percentWords(chance: number): string {
  const percent = Math.round(100 * chance);
  return percent === 0 && chance > 0 ? t("board.forecast_chance_small") : t("board.forecast_chance", { percent });
}

function endingWords(ending: Ending["ending"]): string {
  if (ending === "not_completed") return t("board.forecast_not_completed");
  return ending === 0 ? t("board.forecast_clear") : t("board.forecast_penalties", { penalties: ending });
}
