import { useMemo } from "preact/hooks";
import { Link } from "wouter-preact";

import { Row, Rows, Section } from "../../parts/Card.tsx";
import { Screen } from "../../parts/Screen.tsx";
import { type SavedRecord, useRecords, useRole } from "../../store/book.ts";
import { calibrate } from "../../pace/calibration.ts";
import { showDistance } from "../../units/index.ts";
import { showShortDay } from "../../words/dates.ts";
import { inside, t } from "../../words/index.ts";
import { factorWords } from "./factorWords.ts";

/** All measured tracks, by field. */
export function Tracks() {
  const tracks = useRecords("track");
  const fields = useRecords("field");
  const role = useRole();
  const groups = useMemo(() => byField(tracks ?? [], fields ?? []), [tracks, fields]);
  return (
    <Screen title={t("track.title")} back="/fields" actions={role !== "reader" && <Link class="button button--main" href="/tracks/new">{t("track.new")}</Link>}>
      {tracks?.length === 0 && <p class="empty">{t("track.empty")}</p>}
      {groups.map(({ title, tracks: some }) => (
        <Section title={title} key={title}>
          <Rows>{some.map((track) => <TrackRow track={track} key={track.record_id} />)}</Rows>
        </Section>
      ))}
      <Calibrations writes={role !== "reader"} />
    </Screen>
  );
}

/** Instruments that were walked along a tape. */
function Calibrations({ writes }: { writes: boolean }) {
  const all = useRecords("calibration");
  if (!all || (all.length === 0 && !writes)) return null;
  return (
    <Section title={t("calibration.all")}>
      <Rows>{all.map(({ record_id, body }) => <Row href={`/calibration/${record_id}`} title={body.instrument} detail={`${factorWords(calibrate(body))}, ${showShortDay(body.date)}`} key={record_id} />)}</Rows>
      {writes && <p><Link class="button" href="/calibration/new">{t("calibration.door")}</Link></p>}
    </Section>
  );
}

function TrackRow({ track: { record_id, body } }: { track: SavedRecord<"track"> }) {
  const detail = t("track.row", { distance: showDistance(body.distance_m), how: inside(t(`track.by_${body.measured_by}`)) });
  return <Row href={`/tracks/${record_id}`} title={body.name} detail={detail} />;
}

interface Group {
  title: string;
  tracks: SavedRecord<"track">[];
}

function byField(tracks: SavedRecord<"track">[], fields: SavedRecord<"field">[]): Group[] {
  const names = new Map(fields.map((field) => [field.record_id, field.body.name]));
  const groups = new Map<string, SavedRecord<"track">[]>();
  for (const track of tracks) {
    const title = names.get(track.body.field_id ?? "") ?? t("track.elsewhere");
    groups.set(title, [...(groups.get(title) ?? []), track]);
  }
  return [...groups].map(([title, some]) => ({ title, tracks: some }));
}
