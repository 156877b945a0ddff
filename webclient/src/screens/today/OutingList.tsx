import { Row, Rows } from "../../parts/Card.tsx";
import { type SavedRecord, useRecords } from "../../store/book.ts";
import { showDay } from "../../words/dates.ts";
import { inside, t } from "../../words/index.ts";

/** Earlier outings, newest first; each opens to what happened. */
export function OutingList({ outings }: { outings: SavedRecord<"outing">[] }) {
  const horses = useNames("horse");
  const fields = useNames("field");
  return (
    <Rows>
      {outings.map(({ record_id, body, state }) => (
        <Row
          href={body.closed ? `/timeline/${record_id}` : `/outing/${record_id}`} key={record_id}
          title={`${horses.get(body.horse_id) ?? t("today.some_horse")}, ${inside(t(`activity.${body.activity}`))}`}
          detail={[showDay(body.date), body.field_id && fields.get(body.field_id), !body.closed && t("today.not_finished")].filter(Boolean).join(" · ")}
          end={state !== "sent" && t(`today.state_${state}`)}
        />
      ))}
    </Rows>
  );
}

function useNames(kind: "horse" | "field"): Map<string, string> {
  const records = useRecords(kind) ?? [];
  return new Map(records.map(({ record_id, body }) => [record_id, body.name]));
}
