import { useState } from "preact/hooks";

import { MEASURED_BY } from "../../entries/bodies.ts";
import { tenths } from "../../pace/phrases.ts";
import { BigButton } from "../../parts/BigButton.tsx";
import { Choices } from "../../parts/Choices.tsx";
import { TextBox } from "../../parts/TextBox.tsx";
import { save, type SavedRecord, useDraft, useRecords } from "../../store/book.ts";
import { units } from "../../units/index.ts";
import { t } from "../../words/index.ts";
import { blankTrack, distanceU, draftOf, metresOf, readDraft, type TrackDraft, trackBody, troubles } from "./trackDraft.ts";

interface Props {
  /** The field it is likely to be in. */
  field_id: string | null;
  /** The track that is edited; absent for a new one. */
  track?: SavedRecord<"track">;
  onSaved: (record_id: string) => void;
}

const NO_FIELD = "none";
const EXAMPLE_MPM = 400;

/** Name, distance and how it was measured; what is half typed survives a killed page. */
export function TrackForm({ field_id, track, onSaved }: Props) {
  const unit = units.value === "metric" ? "m" : "yd";
  const first = track ? draftOf(track.body, unit) : blankTrack(field_id, unit);
  const [kept, keep, clear] = useDraft(`track ${track?.record_id ?? "new"}`, JSON.stringify(first));
  const [asked, setAsked] = useState(false);
  const draft = readDraft(kept, first);
  const change = (more: Partial<TrackDraft>): void => keep(JSON.stringify({ ...draft, ...more }));
  const lacking = asked ? troubles(draft) : [];
  const store = async (event: Event): Promise<void> => {
    event.preventDefault();
    setAsked(true);
    const body = trackBody(draft, track?.body ?? null);
    if (body === null) return;
    const saved = await save("track", body, track?.record_id).catch(() => null); // the frame says why
    if (saved === null) return;
    clear();
    onSaved(saved.record_id);
  };
  return (
    <form class="form" onSubmit={(event) => void store(event)}>
      <TextBox
        label={t("track.name")} hint={t("track.name_hint")} value={draft.name} most={120} onInput={(name) => change({ name })}
        trouble={lacking.includes("need_name") ? t("track.need_name") : null}
      />
      <Measured draft={draft} change={change} trouble={lacking.includes("need_distance")} />
      <FieldChoice field_id={draft.field_id} onChoose={(id) => change({ field_id: id })} />
      <TextBox label={t("track.notes")} hint={t("track.notes_hint")} value={draft.notes} lines={2} most={4000} onInput={(notes) => change({ notes })} />
      <BigButton tone="main" type="submit">{t("track.save")}</BigButton>
    </form>
  );
}

interface MeasuredProps {
  draft: TrackDraft;
  change: (more: Partial<TrackDraft>) => void;
  trouble: boolean;
}

function Measured({ draft, change, trouble }: MeasuredProps) {
  return (
    <>
      <TextBox
        label={t("track.distance", { unit: t(`track.unit_${draft.unit}`) })} hint={t("track.distance_hint")} inputMode="decimal"
        value={draft.distance} most={20} onInput={(distance) => change({ distance })} trouble={trouble ? t("track.need_distance") : null}
      />
      <Choices
        label={t("track.unit")} value={draft.unit} onChoose={(unit) => unit && change({ unit })}
        choices={(["m", "yd"] as const).map((value) => ({ value, words: t(`track.unit_${value}`) }))}
      />
      <Choices
        label={t("track.measured_by")} value={draft.measured_by} onChoose={(by) => by && change({ measured_by: by })}
        choices={MEASURED_BY.map((value) => ({ value, words: t(`track.by_${value}`) }))}
      />
      <HowSure draft={draft} />
    </>
  );
}

/** The uncertainty in words, and what it means for a speed. */
function HowSure({ draft }: { draft: TrackDraft }) {
  const metres = metresOf(draft);
  if (metres === null) return null;
  const u = distanceU(metres, draft);
  const shown = `${tenths(u)} m`;
  return (
    <p class="quiet">
      {draft.distance_u_m === null ? `${t(`track.u_${draft.measured_by}`, { u: shown })} ${t("track.u_assumed")}` : t("track.u_own", { u: shown })}{" "}
      {t("track.u_effect", { speed: EXAMPLE_MPM, mpm: tenths((EXAMPLE_MPM * u) / metres) })}
    </p>
  );
}

function FieldChoice({ field_id, onChoose }: { field_id: string | null; onChoose: (id: string | null) => void }) {
  const fields = useRecords("field");
  if (!fields || fields.length === 0) return null;
  return (
    <Choices
      label={t("track.field")} value={field_id ?? NO_FIELD} onChoose={(id) => onChoose(id === NO_FIELD ? null : id)}
      choices={[...fields.map((one) => ({ value: one.record_id, words: one.body.name })), { value: NO_FIELD, words: t("track.elsewhere") }]}
    />
  );
}

