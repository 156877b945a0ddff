import { Link, useLocation } from "wouter-preact";

import { speed } from "../../pace/speed.ts";
import { Button } from "../../parts/BigButton.tsx";
import { NotHere } from "../../parts/NotHere.tsx";
import { Screen } from "../../parts/Screen.tsx";
import { toast } from "../../parts/toast.ts";
import { putBack, type SavedRecord, takeBack, useRecord, useRole, useWhetherHere } from "../../store/book.ts";
import { t } from "../../words/index.ts";
import { exportGpx } from "./exportGpx.ts";
import { MeasuredTrace } from "./Measured.tsx";
import { traceTitle } from "./title.ts";

/** One trace: what it says, out as a file, or away. */
export function TraceScreen({ params: { id } }: { params: { id: string } }) {
  const whether = useWhetherHere("trace", id);
  const trace = useRecord("trace", id);
  if (whether === "missing") return <NotHere />;
  return trace ? <Shown trace={trace} /> : <Screen title={t("kind.trace")} back="/">{null}</Screen>;
}

function Shown({ trace: { record_id, body } }: { trace: SavedRecord<"trace"> }) {
  const [, navigate] = useLocation();
  const canter = useRecord("timed_canter", body.canter_id ?? "");
  const writes = useRole() !== "reader";
  const traces = `/outing/${body.outing_id}/traces`;
  const remove = async (): Promise<void> => {
    await takeBack(record_id);
    navigate(traces, { replace: true });
    toast(t("location.taken_back"), () => putBack(record_id));
  };
  return (
    <Screen title={traceTitle(body)} back={traces}>
      <p class="quiet">{t(`location.from_${body.source}`)} {t("location.points", { n: body.latitude_udeg.length })}</p>
      <MeasuredTrace trace={body} {...(canter && { hand: speed(canter.body) })} />
      <p class="quiet">{t("location.not_counted")}</p>
      {canter && <p><Link href={`/watch/canter/${canter.record_id}`}>{t("watch.result_title")}</Link></p>}
      <p class="buttons">
        <Button onClick={() => void exportGpx([body])}>{t("gpx.export")}</Button>
        {writes && <Button tone="stop" onClick={() => void remove()}>{t("location.take_back")}</Button>}
      </p>
    </Screen>
  );
}
