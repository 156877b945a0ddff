import "./media.css";

import { Link } from "wouter-preact";

import type { Bodies } from "../../entries/bodies.ts";
import { type MediaTrouble, useMedia, useMediaAbout } from "../../media/view.ts";
import { Button } from "../../parts/BigButton.tsx";
import { toast } from "../../parts/toast.ts";
import type { RecordRow } from "../../store/db.ts";
import { putBack, takeBack, useRole } from "../../store/book.ts";
import { showTime } from "../../units/times.ts";
import { showDay, showMoment } from "../../words/dates.ts";
import { t } from "../../words/index.ts";
import { AddMedia } from "./AddMedia.tsx";

export interface AboutProps {
  /** What is about any of these stands here; a new photo is about the first. */
  ids: string[];
  /** What that is, in words. */
  what: string;
  /** At home: smaller buttons. */
  home?: boolean;
  /** Only shows what is there. */
  only?: boolean;
  /** The buttons stand behind one line. */
  folded?: boolean;
}

/** Photos and voice notes about a record, and the buttons to add one. */
export function MediaAbout({ ids, what, home, only, folded }: AboutProps) {
  const rows = useMediaAbout(ids);
  const writes = useRole() !== "reader" && !only;
  const of = (kind: string) => rows.filter((row) => row.kind === kind);
  const add = <AddMedia about_id={ids[0]!} big={!home} />;
  if (!rows.length && !writes) return null;
  return (
    <div class="media" role="group" aria-label={t("media.about", { what })}>
      {of("photo").length > 0 && <ul class="media__photos">{of("photo").map((row) => <li key={row.record_id}><Thumb row={row} what={what} /></li>)}</ul>}
      {of("voice_note").map((row) => <Voice row={row} writes={writes} key={row.record_id} />)}
      {writes && (folded ? <details class="more"><summary class="more__summary">{t("media.add")}</summary>{add}</details> : add)}
    </div>
  );
}

export function altOf(row: RecordRow, what: string): string {
  return (row.body!.caption as string | null) || t("media.alt", { what, day: showDay(row.local_date) });
}

function Thumb({ row, what }: { row: RecordRow; what: string }) {
  const { url, trouble } = useMedia(row.body as unknown as Bodies["photo"]);
  const alt = altOf(row, what);
  return (
    <Link class="media__thumb" href={`/photo/${row.record_id}`}>
      {url ? <img src={url} alt={alt} decoding="async" /> : <span class="quiet">{alt}{trouble && ` · ${troubleWords(trouble, row)}`}</span>}
    </Link>
  );
}

function Voice({ row, writes }: { row: RecordRow; writes: boolean }) {
  const body = row.body as unknown as Bodies["voice_note"];
  const { url, trouble } = useMedia(body);
  const name = t("media.voice_by", { name: row.author_name ?? "", moment: showMoment(row.recorded_at), time: showTime(Math.round(body.duration_ms / 1000) * 1000) });
  return (
    <div class="media__voice">
      <p class="quiet">{name}{trouble && ` · ${troubleWords(trouble, row)}`}</p>
      {url && <audio controls src={url} aria-label={name} />}
      {body.text && <p>{body.text}</p>}
      {writes && <Button tone="quiet" onClick={() => void remove(row)}>{t("media.take_back_voice")}</Button>}
    </div>
  );
}

export function troubleWords(trouble: MediaTrouble, row: RecordRow): string {
  return t(`media.${trouble}`, { name: row.author_name ?? "" });
}

/** Takes it back with its undo; false where that could not be stored. */
export async function remove({ record_id }: RecordRow): Promise<boolean> {
  return takeBack(record_id).then(
    () => (toast(t("media.taken_back"), () => putBack(record_id)), true),
    () => (toast(t("media.other")), false),
  );
}
