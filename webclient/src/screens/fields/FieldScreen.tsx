import { Link, useLocation } from "wouter-preact";

import { Button } from "../../parts/BigButton.tsx";
import { Row, Rows, Section } from "../../parts/Card.tsx";
import { NotHere } from "../../parts/NotHere.tsx";
import { Screen } from "../../parts/Screen.tsx";
import { toast } from "../../parts/toast.ts";
import { inRidingOrder } from "../../recording/fenceList.ts";
import { putBack, type SavedRecord, takeBack, useRecord, useRecords, useRole, useWhetherHere } from "../../store/book.ts";
import { showDistance } from "../../units/index.ts";
import { t } from "../../words/index.ts";
import "../../style/recording.css";
import { ForkNotice } from "../attempt/ForkNotice.tsx";
import { FenceOrder } from "./FenceOrder.tsx";

/** One field: its fences in riding order and its measured tracks. */
export function FieldScreen({ params }: { params: { id: string } }) {
  const whether = useWhetherHere("field", params.id);
  const field = useRecord("field", params.id);
  const fences = useRecords("fence", { field_id: params.id });
  const tracks = useRecords("track", { field_id: params.id });
  const mayWrite = useRole() !== "reader";
  if (whether === "missing") return <NotHere />;
  if (!field || !fences || !tracks) return <p class="screen quiet">{t("field.loading")}</p>;
  return (
    <Screen title={field.body.name} back="/fields" actions={mayWrite && <Link class="button" href={`/field/${params.id}/edit`}>{t("field.edit")}</Link>}>
      {field.fork && <ForkNotice record={field} />}
      {field.body.notes && <p>{field.body.notes}</p>}
      <Section title={t("field.fences")}>
        <FenceOrder fences={inRidingOrder(fences)} mayWrite={mayWrite} />
        {mayWrite && <p><Link class="big-button big-button--main" href={`/fence/new?field=${params.id}`}>{t("field.add_fence")}</Link></p>}
      </Section>
      <Doors id={params.id} mayWrite={mayWrite} any={fences.length > 0} />
      <Tracks field={field} tracks={tracks} mayWrite={mayWrite} />
      <p><Link class="button" href={`/note/${params.id}`}>{t("field.notes_about")}</Link></p>
      {mayWrite && <TakeBack field={field} />}
    </Screen>
  );
}

function Doors({ id, mayWrite, any }: { id: string; mayWrite: boolean; any: boolean }) {
  return (
    <div class="recording__doors">
      {any && <Link class="big-button" href={`/field/${id}/sketch`}>{t("field.sketch")}</Link>}
      {any && mayWrite && <Link class="big-button" href={`/field/${id}/walk`}>{t("field.walk")}</Link>}
      <Link class="big-button" href={`/field/${id}/share`}>{t("field.share")}</Link>
    </div>
  );
}

function Tracks({ field, tracks, mayWrite }: { field: SavedRecord<"field">; tracks: SavedRecord<"track">[]; mayWrite: boolean }) {
  const href = `/tracks?field=${field.record_id}`;
  return (
    <Section title={t("field.tracks")}>
      <Rows empty={t("field.no_tracks")}>
        {tracks.map(({ record_id, body }) => <Row href={href} title={body.name} detail={t("field.track_is", { distance: showDistance(body.distance_m), by: t(`measured_by.${body.measured_by}`) })} key={record_id} />)}
      </Rows>
      {mayWrite && <p><Link class="button" href={href}>{t("field.add_track")}</Link></p>}
    </Section>
  );
}

function TakeBack({ field }: { field: SavedRecord<"field"> }) {
  const [, navigate] = useLocation();
  const remove = async () => {
    const gone = await takeBack(field.record_id).then(() => true, () => false);
    if (!gone) return toast(t("field.not_saved"));
    toast(t("field.taken_back", { name: field.body.name }), () => putBack(field.record_id));
    navigate("/fields", { replace: true });
  };
  return <p><Button tone="stop" onClick={() => void remove()}>{t("field.take_back")}</Button></p>;
}
