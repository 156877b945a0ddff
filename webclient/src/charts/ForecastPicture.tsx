// How a typical course might end, as bars: the longer, the likelier; a hollow bar under each is the pair's present level.
// Every bar carries its number, so that the picture needs no colour and a screen reader reads a table.

import type { Forecast } from "../board/standing.ts";
import { endings, type Ending } from "../board/forecastRows.ts";
import { t } from "../words/index.ts";

export function ForecastPicture({ forecast }: { forecast: Forecast }) {
  const rows = endings(forecast);
  const most = Math.max(...rows.flatMap(({ chance, present = 0 }) => [chance, present]));
  const level = forecast.present_level?.level_name;
  return (
    <div class="forecast__frame"><table class="forecast">
      <caption class="quiet">
        {t("board.forecast_rows")}
        {level && <span class="forecast__levels" aria-hidden="true"><Key look="here" level={t("board.forecast_here")} /><Key look="present" level={level} /></span>}
      </caption>
      {rows.map(({ ending, chance, present }) => (
        <tbody key={ending}>
          <tr>
            <th scope="rowgroup" rowSpan={level ? 2 : 1}>{endingWords(ending)}</th>
            <BarAndNumber chance={chance} most={most} look={ending === "not_completed" ? "stop" : "here"} level={level && t("board.forecast_here")} />
          </tr>
          {present !== undefined && <tr><BarAndNumber chance={present} most={most} look="present" level={level} /></tr>}
        </tbody>
      ))}
    </table></div>
  );
}

const Key = ({ look, level }: { look: Look; level: string }) => <span class="forecast__key"><Bar share={1} look={look} />{level}</span>;

type Look = "here" | "stop" | "present";

function BarAndNumber({ chance, most, look, level }: { chance: number; most: number; look: Look; level?: string }) {
  return (
    <>
      <td class="forecast__cell" aria-hidden="true"><Bar share={chance / most} look={look} /></td>
      <td class={`forecast__number forecast__number--${look}`}>{level && <span class="unseen">{level} </span>}{percentWords(chance)}</td>
    </>
  );
}

function Bar({ share, look }: { share: number; look: Look }) {
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
