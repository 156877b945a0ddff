import { useMemo } from "preact/hooks";

import { riddenPhrase } from "../../conditioning/phrases.ts";
import { recoveryState } from "../../conditioning/suggest.ts";
import type { Horse } from "../../entries/bodies.ts";
import { Row, Rows } from "../../parts/Card.tsx";
import { useRecords } from "../../store/book.ts";
import { say, t } from "../../words/index.ts";

/** The interval sets of an outing, each with how its recovery went; nothing where there are none. */
export function SetsOf({ outing_id, horse }: { outing_id: string; horse: Horse | undefined }) {
  const sets = useRecords("interval_set", useMemo(() => ({ outing_id }), [outing_id]));
  if (!sets?.length || !horse) return null;
  return (
    <Rows>
      {sets.map(({ record_id, body }) => {
        const state = recoveryState(body, horse);
        const told = state === null ? t("conditioning.no_rates") : t(`conditioning.state_${state}_title`);
        return <Row href={`/conditioning/set/${record_id}`} title={`${t("conditioning.title")}: ${say(riddenPhrase(body.intervals))}`} detail={told} key={record_id} />;
      })}
    </Rows>
  );
}
