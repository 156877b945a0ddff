import type { Standing } from "../../board/standing.ts";
import { syncState } from "../../sync/state.ts";
import { showDay } from "../../words/dates.ts";
import { t } from "../../words/index.ts";

/** How old a standing is and what it has not counted: a number without its date misleads. */
export function AsOf({ standing }: { standing: Standing }) {
  const waiting = syncState.value.waiting;
  return (
    <p class="quiet">
      {t("board.as_of", { day: showDay(standing.as_of), number: standing.logbook_number })}
      {waiting > 0 && ` ${t("board.not_counted", { n: waiting })}`}
    </p>
  );
}
