// The recording screen: the day's fences, and at the chosen one the big buttons. On a phone one of the two
// is shown, on a wide or turned screen both.

import { useEffect } from "preact/hooks";
import { Link } from "wouter-preact";

import { NotHere } from "../../parts/NotHere.tsx";
import { Screen } from "../../parts/Screen.tsx";
import { type SavedRecord, useRole } from "../../store/book.ts";
import { t } from "../../words/index.ts";
import "../../style/recording.css";
import "../../style/sketch.css";
import { Again } from "./Again.tsx";
import { announced } from "./announce.ts";
import { Cautions } from "./Cautions.tsx";
import { FallBanner } from "./FallBanner.tsx";
import { shownFall } from "./fallShown.ts";
import { FenceActions } from "./FenceActions.tsx";
import { FenceList } from "./FenceList.tsx";
import { FencePanel } from "./FencePanel.tsx";
import { OutingHeader } from "./OutingHeader.tsx";
import { takeUpLeftTaps } from "./recorder.ts";
import { rememberLeaving } from "./sequenceLeft.ts";
import { StopNotice } from "./StopNotice.tsx";
import { TapBar } from "./TapBar.tsx";
import { type OutingView, useOuting } from "./useOuting.ts";

interface Props {
  params: { id: string; fenceId?: string };
}

export function OutingScreen({ params }: Props) {
  const view = useOuting(params.id, params.fenceId ?? null);
  useEffect(() => void takeUpLeftTaps(), []);
  if (view === "missing") return <NotHere />;
  if (view === "loading") return <p class="screen quiet">{t("outing.loading")}</p>;
  return <Shown view={view} fence_id={params.fenceId ?? null} />;
}

function Shown({ view, fence_id }: { view: OutingView; fence_id: string | null }) {
  const mayRecord = useRole() !== "reader";
  const fence = view.fences.find((each) => each.record_id === fence_id);
  rememberLeaving(view, fence_id);
  const fall = shownFall.value?.outing_id === view.outing.record_id ? shownFall.value : null;
  return (
    <Screen
      title={fence?.body.label ?? outingTitle(view)} back={fence ? `/outing/${view.outing.record_id}` : "/"} recording={mayRecord}
      actions={fence && mayRecord && !fall && <FenceActions fence={fence} outing_id={view.outing.record_id} />}
    >
      <p class="unseen" role="status" aria-live="polite">{announced.value}</p>
      {fall ? <StopNotice view={view} record_id={fall.record_id} /> : <ListAndPanel view={view} fence={fence} mayRecord={mayRecord} />}
    </Screen>
  );
}

function ListAndPanel({ view, fence, mayRecord }: { view: OutingView; fence: SavedRecord<"fence"> | undefined; mayRecord: boolean }) {
  return (
    <div class={fence ? "recording recording--at-fence" : "recording"}>
      <section class="recording__list" aria-label={t("outing.fences")}>
        <OutingHeader view={view} mayRecord={mayRecord} />
        <FallBanner view={view} />
        <Cautions view={view} />
        <FenceList view={view} chosen={fence?.record_id ?? null} mayRecord={mayRecord} />
      </section>
      {fence ? <FencePanel view={view} fence={fence} mayRecord={mayRecord} key={fence.record_id} /> : <Beside view={view} mayRecord={mayRecord} />}
    </div>
  );
}

function outingTitle({ horse, field }: OutingView): string {
  const name = horse?.body.name ?? t("outing.no_horse");
  return field ? t("outing.title", { horse: name, field: field.body.name }) : name;
}

/** What stands where the buttons would be while no fence is chosen. */
function Beside({ view, mayRecord }: { view: OutingView; mayRecord: boolean }) {
  const base = `/outing/${view.outing.record_id}`;
  const sets = mayRecord && <Link class="big-button" href={`/conditioning?outing=${view.outing.record_id}`}>{t("outing.sets")}</Link>;
  const fitness = view.outing.body.activity === "fitness";
  return (
    <section class="recording__beside">
      <div class="recording__doors">
        <Link class="big-button" href={`${base}/attempts`}>{t("outing.timeline")}</Link>
        <Link class="big-button" href={`/note/${view.outing.record_id}`}>{t("outing.notes")}</Link>
        {view.field && <Link class="big-button" href={`/field/${view.field.record_id}/sketch?outing=${view.outing.record_id}`}>{t("field.sketch")}</Link>}
        {!fitness && sets}
      </div>
      {mayRecord && (
        <div class="panel__controls">
          {view.attempts.length > 0 && <TapBar view={view} />}
          <Again view={view} />
          <div class="recording__doors">
            <Link class="big-button big-button--main" href={`${base}/made-up`}>{t("outing.make_up")}</Link>
            <Link class="big-button" href={`/watch?outing=${view.outing.record_id}`}>{t("outing.stopwatch")}</Link>
            {fitness && sets}
          </div>
        </div>
      )}
    </section>
  );
}
