import "./media.css";

import type { Bodies, KindName } from "../../entries/bodies.ts";
import { useMaker, useMedia } from "../../media/view.ts";
import { BigButton } from "../../parts/BigButton.tsx";
import { goBack } from "../../parts/goBack.ts";
import { NotHere } from "../../parts/NotHere.tsx";
import { Screen } from "../../parts/Screen.tsx";
import { toast } from "../../parts/toast.ts";
import type { RecordRow } from "../../store/db.ts";
import { edit, useRecord, useRole } from "../../store/book.ts";
import { useLive } from "../../store/live.ts";
import { here } from "../../store/place.ts";
import { findRecord } from "../../store/read.ts";
import { showMoment } from "../../words/dates.ts";
import { t } from "../../words/index.ts";
import { ForkNotice } from "../attempt/ForkNotice.tsx";
import { KeptText } from "../note/KeptText.tsx";
import { aboutWords } from "../note/NoteScreen.tsx";
import { altOf, remove, troubleWords } from "./MediaAbout.tsx";

/** One photo, as large as it gets, with what it shows in words. */
export function PhotoScreen({ params }: { params: { id: string } }) {
  const found = useLive(async () => {
    const row = await findRecord(here(), params.id);
    const about = row?.body ? await findRecord(here(), row.body.about_id as string) : undefined;
    return { row, about };
  }, [params.id]);
  const fence = useRecord("fence", found?.about?.fence_id ?? "");
  if (!found) return <p class="screen quiet">{t("note.loading")}</p>;
  if (found.row?.shelf !== "photo") return <NotHere />;
  const what = found.about?.body ? aboutWords(found.about, fence?.body) : t(`kind.${"photo" satisfies KindName}`);
  return <Shown row={found.row} what={what} back={backTo(found.about)} key={params.id} />;
}

function backTo(about: RecordRow | undefined): string {
  const screens: Record<string, string> = { attempt: "/attempt/", fence: "/fence/", outing: "/timeline/" };
  return about && screens[about.kind] ? screens[about.kind] + about.record_id : "/";
}

function Shown({ row, what, back }: { row: RecordRow; what: string; back: string }) {
  const body = row.body as unknown as Bodies["photo"];
  const { url, trouble } = useMedia(body);
  const maker = useMaker(row);
  const writes = useRole() !== "reader";
  return (
    <Screen title={what} back={back} wide>
      <ForkNotice record={row as { record_id: string }} />
      {url && <img class="photo" src={url} width={body.width_px} height={body.height_px} alt={altOf(row, what)} />}
      {trouble && <p role="status">{troubleWords(trouble, row)}</p>}
      <p class="quiet">{t("attempt.by_at", { name: maker.name, moment: showMoment(maker.at) })}</p>
      {writes ? <Caption row={row} body={body} /> : body.caption && <p>{body.caption}</p>}
      {writes && <BigButton tone="stop" onClick={() => void remove(row).then((gone) => gone && goBack(back))}>{t("media.take_back")}</BigButton>}
    </Screen>
  );
}

function Caption({ row, body }: { row: RecordRow; body: Bodies["photo"] }) {
  const keep = (caption: string | null) =>
    edit({ record_id: row.record_id, kind: "photo", body }, { caption }).then(Boolean, () => {
      toast(t("media.other"));
      return false;
    });
  return <KeptText draftKey={`photo ${row.record_id}`} said={body.caption} keep={keep} label={t("media.caption")} hint={t("media.caption_hint")} most={200} />;
}
