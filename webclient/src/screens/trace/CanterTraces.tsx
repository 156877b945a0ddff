import { Link } from "wouter-preact";

import { speed } from "../../pace/speed.ts";
import { Section } from "../../parts/Card.tsx";
import { putBack, type SavedRecord, takeBack, useRecords } from "../../store/book.ts";
import { here } from "../../store/place.ts";
import { findRecords } from "../../store/read.ts";
import { t } from "../../words/index.ts";
import { MeasuredTrace } from "./Measured.tsx";

type Canter = SavedRecord<"timed_canter">;

/** The phone's location beside the stopwatch, where it was recorded. */
export function CanterTraces({ canter: { record_id, body } }: { canter: Canter }) {
  const traces = useRecords("trace", { outing_id: body.outing_id })?.filter((trace) => trace.body.canter_id === record_id);
  if (!traces?.length) return null;
  return (
    <Section title={t("location.beside")}>
      {traces.map((trace) => (
        <div class="card" key={trace.record_id}>
          <MeasuredTrace trace={trace.body} hand={speed(body)} />
          <p class="quiet">{t("location.not_counted")}</p>
          <p><Link href={`/trace/${trace.record_id}`}>{t("location.open")}</Link></p>
        </div>
      ))}
    </Section>
  );
}

/** Takes back the traces of a canter that is thrown away; the answer brings them back with it. */
export async function takeBackTraces(canter_id: string): Promise<() => Promise<void>> {
  const traces = (await findRecords(here(), "trace", {})).filter((row) => row.body?.["canter_id"] === canter_id);
  for (const trace of traces) await takeBack(trace.record_id);
  return async () => {
    for (const trace of traces) await putBack(trace.record_id);
  };
}
