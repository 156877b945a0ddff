import { useEffect } from "preact/hooks";

import { faceText } from "../../pace/clockface.ts";
import { type Cue, type CueKind, MINUTE_MS, nextMinute } from "../../pace/cues.ts";
import type { Plan, Run } from "../../pace/run.ts";
import { Button } from "../../parts/BigButton.tsx";
import { Icon } from "../../parts/Icon.tsx";
import { Screen } from "../../parts/Screen.tsx";
import { toast } from "../../parts/toast.ts";
import { useRecord } from "../../store/book.ts";
import { showDistance } from "../../units/index.ts";
import { useBusy } from "../../update/busy.ts";
import { t } from "../../words/index.ts";
import { TraceSign } from "../trace/TraceChoice.tsx";
import { Face, SayTime } from "./Face.tsx";
import { targetMs } from "./stopwatch.ts";
import { stopwatch } from "./thisWatch.ts";
import { WatchButton } from "./WatchButton.tsx";
import { whereWords } from "./where.ts";

const CUE_SHOWN_MS: Record<CueKind, number> = { count: 500, go: 1500, minute: 6000, target: 4000 };

/** A run in progress: the time, where the target would be, STOP and SPLIT; before its zero, calling it off. */
export function Running({ run }: { run: Run }) {
  useBusy();
  const track = useRecord("track", run.plan.track_id ?? "");
  const cue = stopwatch.cue.value;
  useEffect(() => {
    if (cue === null) return;
    const timer = setTimeout(() => void (stopwatch.cue.value = null), CUE_SHOWN_MS[cue.kind]);
    return () => clearTimeout(timer);
  }, [cue]);
  const counting = (stopwatch.elapsed()?.elapsed_ms ?? 0) < 0;
  return (
    <Screen title={t(counting ? "watch.counting" : "watch.running")} recording actions={<ThrowAway />}>
      <div class={cue === null ? "watch" : `watch watch--${cue.kind}`}>
        <div class="watch__read">
          <p class="watch__what">{t("watch.running_over", { track: track?.body.name ?? t("track.one"), distance: showDistance(run.plan.distance_m) })}</p>
          <Face elapsed_ms={null} />
          <CueLine run={run} cue={cue} />
          <Splits splits_ms={run.splits_ms} />
          <Signs />
          <SayTime />
        </div>
        <div class={counting ? "watch__controls watch__controls--one" : "watch__controls"}>
          {!counting && (
            <WatchButton tone="split" keys="1–9" detail={t("watch.split_count", { n: run.splits_ms.length })} onPress={(at) => void stopwatch.split(at)}>
              {t("watch.split")}
            </WatchButton>
          )}
          <WatchButton tone="stop" keys={t("watch.key_space")} detail={t(counting ? "watch.call_off_hint" : "watch.stop_hint")} onPress={(at) => void stopwatch.stop(at)}>
            {t(counting ? "watch.call_off" : "watch.stop")}
          </WatchButton>
        </div>
      </div>
    </Screen>
  );
}

function CueLine({ run, cue }: { run: Run; cue: Cue | null }) {
  const { plan } = run;
  const target = targetMs(plan);
  if (cue !== null && cue.kind !== "count") return <CueNow cue={cue} plan={plan} />;
  const elapsed_ms = stopwatch.elapsed()?.elapsed_ms ?? 0;
  if (elapsed_ms < 0) return <p class="watch__target">{t("watch.counting_hint")}</p>;
  if (target === null || plan.target_speed_mpm === null) return null;
  const next_ms = nextMinute(elapsed_ms);
  return (
    <>
      <p class="watch__target">{t("watch.target_passes", { speed: plan.target_speed_mpm, time: faceText(target) })}</p>
      <p>{t("watch.next_minute", { n: next_ms / MINUTE_MS, where: whereWords(next_ms, plan)! })}</p>
    </>
  );
}

/** A cue as it falls: large, with where she should be by now. */
function CueNow({ cue, plan }: { cue: Cue; plan: Plan }) {
  if (cue.kind === "go") return <p class="watch__cue" role="status">{t("watch.cue_go")}</p>;
  const where = cue.kind === "minute" ? whereWords(cue.at_ms, plan) : t("watch.cue_target_where");
  return (
    <div class="watch__now" role="status">
      <p class="watch__cue">{cue.kind === "target" ? t("watch.cue_target") : t("watch.cue_minute", { n: cue.at_ms / MINUTE_MS })}</p>
      {where && <p class="watch__target">{t("watch.be", { where })}</p>}
    </div>
  );
}

function Splits({ splits_ms }: { splits_ms: number[] }) {
  if (splits_ms.length === 0) return null;
  const newest = splits_ms.map((ms, index) => ({ n: index + 1, ms })).slice(-3);
  return (
    <ul class="watch__splits" aria-label={t("watch.splits")}>
      {newest.map(({ n, ms }) => <li key={n}>{t("watch.split_line", { n, time: faceText(ms) })}</li>)}
    </ul>
  );
}

/** What the rider should know while it runs: whether it is kept, whether the screen stays on, which clock. */
function Signs() {
  const clock = stopwatch.elapsed()?.clock ?? "agree";
  const keeping = stopwatch.keeping.value;
  return (
    <ul class="watch__signs">
      {keeping === "unsaved" && <li class="watch__sign watch__sign--stop"><Icon name="stop" />{t("watch.not_kept")}</li>}
      {keeping !== "unsaved" && <li class="watch__sign">{keeping === "kept" && <Icon name="tick" />}{t(keeping === "kept" ? "watch.kept" : "watch.keeping")}</li>}
      {stopwatch.wakefulness.value === "refused" && <li class="watch__sign"><Icon name="attention" />{t("watch.screen_may_turn_off")}</li>}
      {clock !== "agree" && <li class="watch__sign"><Icon name="attention" />{t(`watch.now_${clock}`)}</li>}
      <TraceSign />
    </ul>
  );
}

function ThrowAway() {
  const throwAway = async (): Promise<void> => {
    const run = await stopwatch.throwAway();
    if (run !== null) toast(t("watch.thrown_away"), () => stopwatch.bringBack(run));
  };
  return <Button tone="quiet" onClick={() => void throwAway()}>{t("watch.throw_away")}</Button>;
}
