import { useState } from "preact/hooks";
import { useLocation } from "wouter-preact";

import type { GpxRead } from "../../gpx/read.ts";
import { bodyOf } from "../../location/points.ts";
import { rounded } from "../../pace/phrases.ts";
import { BigButton, Button } from "../../parts/BigButton.tsx";
import { Row, Rows, Section } from "../../parts/Card.tsx";
import { NotHere } from "../../parts/NotHere.tsx";
import { Screen } from "../../parts/Screen.tsx";
import { save, useRecords, useRole, useWhetherHere } from "../../store/book.ts";
import { showDistance } from "../../units/index.ts";
import { t } from "../../words/index.ts";
import { exportGpx } from "./exportGpx.ts";
import { GpxInput, Notes } from "./GpxInput.tsx";
import { traceTitle } from "./title.ts";

/** Every trace of an outing: to open, to take out as one file, and to bring another in. */
export function OutingTraces({ params: { id } }: { params: { id: string } }) {
  const whether = useWhetherHere("outing", id);
  const traces = useRecords("trace", { outing_id: id });
  const writes = useRole() !== "reader";
  if (whether === "missing") return <NotHere />;
  return (
    <Screen title={t("location.traces")} back={`/outing/${id}`}>
      <p class="quiet">{t("location.personal")}</p>
      {traces && <Rows empty={t("location.none")}>{traces.map(({ record_id, body }) => <Row href={`/trace/${record_id}`} title={traceTitle(body)} detail={t(`location.from_${body.source}`)} key={record_id} />)}</Rows>}
      {traces && traces.length > 0 && <Button onClick={() => void exportGpx(traces.map((trace) => trace.body))}>{t("gpx.export_all")}</Button>}
      {writes && <BringIn outing_id={id} />}
    </Screen>
  );
}

function BringIn({ outing_id }: { outing_id: string }) {
  const [read, setRead] = useState<GpxRead | null>(null);
  const [, navigate] = useLocation();
  const keep = async (found: GpxRead): Promise<void> => {
    const saved = await save("trace", bodyOf(found.points, { outing_id, source: "file", name: found.name }, found.count)).catch(() => null); // the frame says why
    if (saved) navigate(`/trace/${saved.record_id}`);
  };
  return (
    <Section title={t("gpx.import")}>
      <GpxInput label={t("gpx.file")} onRead={setRead} />
      {read && (
        <div class="card" role="status">
          <p>{t(read.points[0]!.at_ms === null ? "gpx.found_drawn" : "gpx.found_timed", { n: read.count, length: showDistance(rounded(read.length_m)) })}</p>
          <Notes left={read.left} />
          {read.count > read.points.length && <p>{t("location.left_out", { n: read.count - read.points.length })}</p>}
          <BigButton tone="main" onClick={() => void keep(read)}>{t("gpx.keep")}</BigButton>
        </div>
      )}
    </Section>
  );
}
