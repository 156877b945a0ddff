import { useState } from "preact/hooks";
import { Link, useLocation, useSearch } from "wouter-preact";

import { type Calibration, MEASURED_BY } from "../../entries/bodies.ts";
import { calibrate } from "../../pace/calibration.ts";
import { tenths } from "../../pace/phrases.ts";
import { BigButton } from "../../parts/BigButton.tsx";
import { Choices } from "../../parts/Choices.tsx";
import { TextBox } from "../../parts/TextBox.tsx";
import { edit, save, type SavedRecord, useAsOpened, useDraft, useRecord, useRecords, useWhetherHere } from "../../store/book.ts";
import { units } from "../../units/index.ts";
import { decimal } from "../../words/decimal.ts";
import { t } from "../../words/index.ts";
import { blankTrack, type DistanceUnit, distanceU, draftOf, measuredOf, readDraft, type TrackDraft, trackBody, type Trouble, troubles } from "./trackDraft.ts";

interface Props {
  /** The field it is likely to be in. */
  field_id: string | null;
  /** The track that is edited; absent for a new one. */
  track?: SavedRecord<"track">;
  onSaved: (record_id: string) => void;
}

const NONE = "none";
const EXAMPLE_MPM = 400;

/** Name, distance and how it was measured; what is half typed survives a killed page. */
export function TrackForm({ field_id, track, onSaved }: Props) {
  const unit = units.value === "metric" ? "m" : "yd";
  const made = new URLSearchParams(useSearch()).get("calibration"); // just calibrated, and back again
  const asOpened = useAsOpened(track);
  const first = useFirst(track, field_id, unit);
  const [kept, keep, clear] = useDraft(`track ${track?.record_id ?? "new"}`, JSON.stringify(first));
  const [asked, setAsked] = useState(false);
  const [picked, setPicked] = useState(made === null);
  const typed = { ...readDraft(kept, first), ...(!picked && { calibration_id: made }) };
  const gone = useWhetherHere("calibration", typed.calibration_id ?? "") === "missing";
  const draft = gone ? { ...typed, calibration_id: null } : typed;
  const change = (more: Partial<TrackDraft>): void => {
    if ("calibration_id" in more) setPicked(true);
    keep(JSON.stringify({ ...draft, ...more }));
  };
  const calibration = useRecord("calibration", draft.calibration_id ?? "")?.body ?? null;
  const lacking = asked ? troubles(draft, calibration) : [];
  const trouble = (what: Trouble): string | null => (lacking.includes(what) ? t(`track.${what}`) : null);
  const store = async (event: Event): Promise<void> => {
    event.preventDefault();
    setAsked(true);
    const stillReading = draft.calibration_id !== null && calibration === null;
    const body = stillReading ? null : trackBody(draft, calibration);
    if (body === null) return;
    const saved = await (asOpened ? edit(asOpened, body) : save("track", body)).catch(() => null); // the frame says why
    if (saved === null) return;
    clear();
    onSaved(saved.record_id);
  };
  return (
    <form class="form" onSubmit={(event) => void store(event)}>
      <TextBox
        label={t("track.name")} hint={t("track.name_hint")} value={draft.name} most={120} onInput={(name) => change({ name })}
        trouble={trouble("need_name")}
      />
      <Measured draft={draft} calibration={calibration} change={change} trouble={trouble} />
      <FieldChoice field_id={draft.field_id} onChoose={(id) => change({ field_id: id })} />
      <TextBox label={t("track.flags")} hint={t("track.flags_hint")} value={draft.flags} most={200} onInput={(flags) => change({ flags })} trouble={trouble("need_flags")} />
      <TextBox label={t("track.notes")} hint={t("track.notes_hint")} value={draft.notes} lines={2} most={4000} onInput={(notes) => change({ notes })} />
      <BigButton tone="main" type="submit">{t("track.save")}</BigButton>
    </form>
  );
}

/** What the form begins with. A track whose calibration is not in this logbook (in the bin, or the track came from
 * another one) keeps the distance it says. */
function useFirst(track: Props["track"], field_id: string | null, unit: DistanceUnit): TrackDraft {
  const calibration_id = track?.body.calibration_id ?? null;
  const whether = useWhetherHere("calibration", calibration_id ?? "");
  if (!track) return blankTrack(field_id, unit);
  const lost = calibration_id !== null && whether === "missing";
  return draftOf(lost ? { ...track.body, calibration_id: null, reading_m: null } : track.body, unit);
}

interface MeasuredProps {
  draft: TrackDraft;
  calibration: Calibration | null;
  change: (more: Partial<TrackDraft>) => void;
  trouble: (what: Trouble) => string | null;
}

function Measured({ draft, calibration, change, trouble }: MeasuredProps) {
  return (
    <>
      <CalibrationChoice draft={draft} change={change} />
      <TextBox
        label={calibration ? t("track.reading", { instrument: calibration.instrument }) : t("track.distance", { unit: t(`track.unit_${draft.unit}`) })}
        hint={t("track.distance_hint")} inputMode="decimal" value={draft.distance} most={20} onInput={(distance) => change({ distance })} trouble={trouble("need_distance")}
      />
      {!calibration && (
        <>
          <Choices
            label={t("track.unit")} value={draft.unit} onChoose={(unit) => unit && change({ unit })}
            choices={(["m", "yd"] as const).map((value) => ({ value, words: t(`track.unit_${value}`) }))}
          />
          <Choices
            label={t("track.measured_by")} value={draft.measured_by} onChoose={(by) => by && change({ measured_by: by })}
            choices={MEASURED_BY.map((value) => ({ value, words: t(`track.by_${value}`) }))}
          />
          <TextBox label={t("track.own_u")} hint={t("track.own_u_hint")} inputMode="decimal" value={draft.own_u} most={10} onInput={(own_u) => change({ own_u })} trouble={trouble("need_u")} />
        </>
      )}
      <HowSure draft={draft} calibration={calibration} />
    </>
  );
}

/** Instruments that were walked along a tape, each with its factor; and the way to calibrate one. */
function CalibrationChoice({ draft, change }: Pick<MeasuredProps, "draft" | "change">) {
  const [path] = useLocation();
  const all = useRecords("calibration");
  const door = <p><Link href={`/calibration/new?back=${path.startsWith("/tracks/") ? path : "/tracks"}`}>{t("calibration.door")}</Link></p>;
  if (!all?.length) return door;
  const chips = all.map(({ record_id, body }) => ({ value: record_id, words: t("calibration.chip", { instrument: body.instrument, factor: decimal(calibrate(body).factor.toFixed(3)) }) }));
  return (
    <>
      <Choices
        label={t("track.calibrated")} value={draft.calibration_id ?? NONE} onChoose={(id) => change({ calibration_id: id === NONE ? null : id })}
        choices={[{ value: NONE, words: t("track.not_calibrated") }, ...chips]}
      />
      {door}
    </>
  );
}

/** The uncertainty in words, and what it means for a speed. */
function HowSure({ draft, calibration }: Pick<MeasuredProps, "draft" | "calibration">) {
  const measured = measuredOf(draft, calibration);
  if (measured === null || Number.isNaN(measured.distance_u_m)) return null;
  const [metres, u] = [measured.distance_m, distanceU(measured.distance_m, { ...draft, ...measured })];
  const shown = `${tenths(u)} m`;
  const words = calibration
    ? t("track.u_calibrated", { distance: tenths(metres), u: shown })
    : measured.distance_u_m === null ? `${t(`track.u_${draft.measured_by}`, { u: shown })} ${t("track.u_assumed")}` : t("track.u_own", { u: shown });
  return <p class="quiet">{words} {t("track.u_effect", { speed: EXAMPLE_MPM, mpm: tenths((EXAMPLE_MPM * u) / metres) })}</p>;
}

function FieldChoice({ field_id, onChoose }: { field_id: string | null; onChoose: (id: string | null) => void }) {
  const fields = useRecords("field");
  if (!fields || fields.length === 0) return null;
  return (
    <Choices
      label={t("track.field")} value={field_id ?? NONE} onChoose={(id) => onChoose(id === NONE ? null : id)}
      choices={[...fields.map((one) => ({ value: one.record_id, words: one.body.name })), { value: NONE, words: t("track.elsewhere") }]}
    />
  );
}
