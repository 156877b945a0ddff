import { useEffect, useRef } from "preact/hooks";
import { Link } from "wouter-preact";

import { BigButton } from "../../parts/BigButton.tsx";
import { Icon } from "../../parts/Icon.tsx";
import { t } from "../../words/index.ts";
import { announceUndone } from "./announce.ts";
import { shownFall } from "./fallShown.ts";
import { undoTap } from "./recorder.ts";
import { TapBar } from "./TapBar.tsx";
import type { OutingView } from "./useOuting.ts";

/** What to do after a fall: for the rider, for the horse, and then nothing more today. */
export function StopNotice({ view, record_id }: { view: OutingView; record_id: string }) {
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => heading.current?.focus(), []);
  const close = () => (shownFall.value = null);
  const fall = view.attempts.find((attempt) => attempt.record_id === record_id);
  const undo = () => {
    close();
    if (fall) void undoTap(record_id).then((gone) => announceUndone(fall.body, undefined, gone));
  };
  return (
    <section class="stop-notice" role="alertdialog" aria-labelledby="stop-title">
      <h2 id="stop-title" class="stop-notice__title" tabIndex={-1} ref={heading}><Icon name="stop" /> {t("outing.stop_title")}</h2>
      <StopWords />
      <p><Link class="button" href="/emergency">{t("emergency.title")}</Link></p>
      <TapBar view={view} />
      <div class="stop-notice__buttons">
        <Link class="big-button" href={`/note/${record_id}?outing=${view.outing.record_id}`} onClick={close}>{t("outing.stop_note")}</Link>
        <BigButton onClick={undo}>{t("outing.stop_undo")}</BigButton>
        <BigButton tone="main" onClick={close}>{t("outing.stop_read")}</BigButton>
      </div>
    </section>
  );
}

/** The words alone, for reading them again. */
export function StopWords() {
  return (
    <>
      <p class="stop-notice__first">{t("outing.stop_first")}</p>
      <h3>{t("outing.stop_rider")}</h3>
      <ul class="bullets">
        <li>{t("outing.stop_urgent")}</li>
        <li>{t("outing.stop_head")}</li>
        <li>{t("outing.stop_doctor")}</li>
        <li>{t("outing.stop_helmet")}</li>
      </ul>
      <h3>{t("outing.stop_horse")}</h3>
      <ul class="bullets">
        <li>{t("outing.stop_trot")}</li>
        <li>{t("outing.stop_vet")}</li>
      </ul>
    </>
  );
}
