import { useMemo } from "preact/hooks";
import { Link, useLocation, useSearch } from "wouter-preact";

import { CanterPicture } from "../../charts/CanterPicture.tsx";
import { speedWords } from "../../charts/words.ts";
import type { Track } from "../../entries/bodies.ts";
import { calibrate } from "../../pace/calibration.ts";
import { lastCanters, type Ridden } from "../../pace/comparison.ts";
import { tenths } from "../../pace/phrases.ts";
import { Button } from "../../parts/BigButton.tsx";
import { Row, Rows, Section } from "../../parts/Card.tsx";
import { NotHere } from "../../parts/NotHere.tsx";
import { Screen } from "../../parts/Screen.tsx";
import { toast } from "../../parts/toast.ts";
import { inOrderMade } from "../../recording/made.ts";
import { putBack, type SavedRecord, takeBack, useRecord, useRecords, useRole, useWhetherHere } from "../../store/book.ts";
import { showDistance } from "../../units/index.ts";
import { useBusy } from "../../update/busy.ts";
import { showShortDay } from "../../words/dates.ts";
import { inside, t } from "../../words/index.ts";
import { factorWords } from "./factorWords.ts";
import { distanceU } from "./trackDraft.ts";
import { TrackForm } from "./TrackForm.tsx";

/** How many canters back the picture of a track looks. */
const HISTORY = 24;

/** A new track. */
export function NewTrack() {
  useBusy();
  const [, navigate] = useLocation();
  const field_id = new URLSearchParams(useSearch()).get("field");
  return (
    <Screen title={t("track.new")} back="/tracks">
      <TrackForm field_id={field_id} onSaved={(id) => navigate(`/tracks/${id}`, { replace: true })} />
    </Screen>
  );
}

/** One track: what was measured, and the canters timed over it. */
export function TrackScreen({ params: { id } }: { params: { id: string } }) {
  const whether = useWhetherHere("track", id);
  const track = useRecord("track", id);
  if (whether === "missing") return <NotHere />;
  if (!track) return <Screen title={t("track.one")} back="/tracks">{null}</Screen>;
  return <TrackView track={track} />;
}

function TrackView({ track }: { track: SavedRecord<"track"> }) {
  const role = useRole();
  const { body, record_id } = track;
  return (
    <Screen title={body.name} back="/tracks" actions={role !== "reader" && <Link class="button" href={`/tracks/${record_id}/edit`}>{t("track.edit")}</Link>}>
      <p>{t("track.row", { distance: showDistance(body.distance_m), how: inside(t(`track.by_${body.measured_by}`)) })} (± {tenths(distanceU(body.distance_m, body))} m)</p>
      <ReadBy body={body} />
      {body.flags_m.length > 0 && <p>{t("track.flags_at", { flags: body.flags_m.map(showDistance).join(", ") })}</p>}
      {body.notes && <p>{body.notes}</p>}
      {role !== "reader" && <p><Link class="big-button big-button--main" href={`/watch?track=${record_id}`}>{t("track.time_here")}</Link></p>}
      <Section title={t("track.canters")}><CantersHere track_id={record_id} distance_m={body.distance_m} /></Section>
    </Screen>
  );
}

/** Of a track measured with a calibrated instrument: what it read, and which. */
function ReadBy({ body: { calibration_id, reading_m } }: { body: Track }) {
  const calibration = useRecord("calibration", calibration_id ?? "");
  if (!calibration || reading_m === null) return null;
  return (
    <p class="quiet">
      {t("track.read_by", { reading: reading_m, factor: factorWords(calibrate(calibration.body)) })} <Link href={`/calibration/${calibration.record_id}`}>{calibration.body.instrument}</Link>
    </p>
  );
}

function CantersHere({ track_id, distance_m }: { track_id: string; distance_m: number }) {
  const canters = useRecords("timed_canter", useMemo(() => ({ track_id }), [track_id]));
  if (!canters) return null;
  const ordered = inOrderMade(canters) as (SavedRecord<"timed_canter"> & Ridden)[];
  const newest = ordered.at(-1);
  if (newest === undefined) return <p class="empty">{t("track.canters_none")}</p>;
  return (
    <>
      <CanterPicture compared={lastCanters(newest, ordered, HISTORY)} target_mpm={newest.body.target_speed_mpm} />
      <Rows>
        {[...ordered].reverse().map((one) => <Row href={`/watch/canter/${one.record_id}`} title={speedWords(one.body)} detail={detailOf(one, distance_m)} key={one.record_id} />)}
      </Rows>
    </>
  );
}

/** The day, and the distance where the track has been measured anew since. */
function detailOf({ local_date, body }: SavedRecord<"timed_canter">, distance_m: number): string {
  const day = showShortDay(local_date);
  return body.distance_m === distance_m ? day : `${day}, ${t("track.ridden_over", { distance: showDistance(body.distance_m) })}`;
}

/** Editing a track moves no canter: each keeps the distance as it was that day. */
export function EditTrack({ params: { id } }: { params: { id: string } }) {
  useBusy();
  const [, navigate] = useLocation();
  const track = useRecord("track", id);
  const whether = useWhetherHere("track", id);
  const canters = useRecords("timed_canter", useMemo(() => ({ track_id: id }), [id]));
  if (whether === "missing") return <NotHere />;
  const takeAway = async (): Promise<void> => {
    await takeBack(id);
    navigate("/tracks", { replace: true });
    toast(t("track.taken_back"), () => putBack(id));
  };
  return (
    <Screen title={t("track.edit")} back={`/tracks/${id}`} actions={<Button tone="stop" onClick={() => void takeAway()}>{t("track.take_back")}</Button>}>
      {canters && canters.length > 0 && <p class="quiet">{t("track.canters_keep", { n: canters.length })}</p>}
      {track && <TrackForm track={track} field_id={track.body.field_id} onSaved={() => navigate(`/tracks/${id}`, { replace: true })} />}
    </Screen>
  );
}

