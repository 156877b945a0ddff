import { Link } from "wouter-preact";

import { Icon } from "../../parts/Icon.tsx";
import { newestOwn } from "../../recording/undo.ts";
import { me } from "../../store/place.ts";
import { t } from "../../words/index.ts";
import { announceUndone } from "./announce.ts";
import { attemptName } from "./names.ts";
import { taps, tryAgain, undoTap, wasMeant } from "./recorder.ts";
import type { OutingView, SeenAttempt } from "./useOuting.ts";

/** The newest tap: whether it is kept, and its undo. It stays until the next tap, and after a killed page. */
export function TapBar({ view }: { view: OutingView }) {
  const failed = taps.value.filter((tap) => tap.state === "not_saved" && tap.body.outing_id === view.outing.record_id);
  const newest = newestOwn(view.attempts as (SeenAttempt & { author?: string | null })[], me.value?.id ?? null, Date.now());
  if (failed.length) return <NotSaved view={view} ids={failed.map((tap) => tap.record_id)} />;
  if (!newest) return <div class="tap-bar"><p class="tap-bar__words quiet">{t("outing.nothing_tapped")}</p></div>;
  return <Newest view={view} newest={newest} />;
}

function Newest({ view, newest }: { view: OutingView; newest: SeenAttempt }) {
  const fence = view.fences.find((each) => each.record_id === newest.body.fence_id);
  const saving = taps.value.find((tap) => tap.record_id === newest.record_id)?.state === "saving";
  const undo = (event: MouseEvent) => {
    if (wasMeant("undo", event)) void undoTap(newest.record_id).then((gone) => announceUndone(newest.body, fence?.body, gone));
  };
  return (
    <div class="tap-bar">
      <p class="tap-bar__words">
        <span class="tap-bar__name">{attemptName(newest.body, fence?.body)}</span>
        <span class={saving ? "tap-bar__state" : "tap-bar__state tap-bar__state--saved"}>{!saving && <Icon name="tick" />}{saving ? t("outing.saving") : t("outing.saved")}</span>
      </p>
      <Link class="big-button" href={`/attempt/${newest.record_id}`}>{t("outing.change")}</Link>
      <button type="button" class="big-button" onClick={undo}>{t("frame.undo")}</button>
    </div>
  );
}

function NotSaved({ view, ids }: { view: OutingView; ids: string[] }) {
  const newest = taps.value.find((tap) => tap.record_id === ids.at(-1))!;
  const fence = view.fences.find((each) => each.record_id === newest.body.fence_id);
  const again = () => ids.forEach((record_id) => void tryAgain(record_id));
  return (
    <div class="tap-bar tap-bar--not-saved">
      <p class="tap-bar__words">
        <span class="tap-bar__name"><Icon name="attention" /> {ids.length > 1 ? t("outing.not_saved_many", { n: ids.length }) : t("outing.not_saved")}</span>
        <span class="tap-bar__state">{attemptName(newest.body, fence?.body)}</span>
      </p>
      <button type="button" class="big-button" onClick={again}>{t("frame.try_again")}</button>
      <button type="button" class="big-button" onClick={() => void undoTap(newest.record_id)}>{t("frame.undo")}</button>
    </div>
  );
}
