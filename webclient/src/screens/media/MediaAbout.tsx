import "./media.css";

import { Link } from "wouter-preact";

import type { Bodies } from "../../entries/bodies.ts";
import { type MediaTrouble, useMaker, useMedia, useMediaAbout } from "../../media/view.ts";
import { Button } from "../../parts/BigButton.tsx";
import { TextBox } from "../../parts/TextBox.tsx";
import { toast } from "../../parts/toast.ts";
import type { RecordRow } from "../../store/db.ts";
import { edit, putBack, type SavedRecord, takeBack, useDraft, useRole } from "../../store/book.ts";
import { showTime } from "../../units/times.ts";
import { showDay, showMoment } from "../../words/dates.ts";
import { t } from "../../words/index.ts";
import { ForkNotice } from "../attempt/ForkNotice.tsx";
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
  const maker = useMaker(row);
  const name = t("media.voice_by", { name: maker.name, moment: showMoment(maker.at), time: showTime(Math.round(body.duration_ms / 1000) * 1000) });
  return (
    <div class="media__voice">
      <p class="quiet">{name}{trouble && ` · ${troubleWords(trouble, row)}`}</p>
      {url && <audio controls src={url} aria-label={name} />}
      {body.text && <p class="media__said">{body.text}</p>}
      <ForkNotice record={row as Pick<SavedRecord, "record_id" | "fork">} />
      {writes && <Said row={row} body={body} />}
      {writes && <Button tone="quiet" onClick={() => void remove(row)}>{t("media.take_back_voice")}</Button>}
    </div>
  );
}

/** What was said, in words: for whoever cannot hear it, and where it cannot be played. */
function Said({ row, body }: { row: RecordRow; body: Bodies["voice_note"] }) {
  const [text, setText, clear] = useDraft(`voice ${row.record_id}`, body.text ?? "");
  const keep = async (event: Event) => {
    event.preventDefault();
    const done = await edit({ record_id: row.record_id, kind: "voice_note", body }, { text: text.trim() || null }).catch(() => null);
    if (!done) return toast(t("media.other"));
    clear();
    toast(t("media.kept"));
  };
  return (
    <details class="more media__write" open={text !== (body.text ?? "")}>
      <summary class="more__summary">{t(body.text ? "media.change_said" : "media.write_said")}</summary>
      <form class="form" onSubmit={keep}>
        <TextBox label={t("media.said")} hint={t("media.said_hint")} value={text} onInput={setText} lines={3} most={4000} />
        <div class="buttons"><Button tone="main" type="submit">{t("media.keep_said")}</Button></div>
      </form>
    </details>
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
