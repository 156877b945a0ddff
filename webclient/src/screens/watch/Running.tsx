import { useEffect } from "preact/hooks";

import { faceText } from "../../pace/clockface.ts";
import type { Cue } from "../../pace/cues.ts";
import type { Run } from "../../pace/run.ts";
import { Button } from "../../parts/BigButton.tsx";
import { Icon } from "../../parts/Icon.tsx";
import { Screen } from "../../parts/Screen.tsx";
import { toast } from "../../parts/toast.ts";
import { useRecord } from "../../store/book.ts";
import { showDistance } from "../../units/index.ts";
import { useBusy } from "../../update/busy.ts";
import { t } from "../../words/index.ts";
import { Face, SayTime } from "./Face.tsx";
import { targetMs } from "./stopwatch.ts";
import { stopwatch } from "./thisWatch.ts";
import { WatchButton } from "./WatchButton.tsx";

const CUE_SHOWN_MS = 4000;

/** A run in progress: the time, where the target would be, STOP and SPLIT. */
export function Running({ run }: { run: Run }) {
  useBusy();
  const track = useRecord("track", run.plan.track_id ?? "");
  const cue = stopwatch.cue.value;
  useEffect(() => {
    if (cue === null) return;
    const timer = setTimeout(() => void (stopwatch.cue.value = null), CUE_SHOWN_MS);
    return () => clearTimeout(timer);
  }, [cue]);
  return (
    <Screen title={t("watch.running")} recording actions={<ThrowAway />}>
      <div class={cue === null ? "watch" : `watch watch--${cue.kind}`}>
        <div class="watch__read">
          <p class="watch__what">{t("watch.running_over", { track: track?.body.name ?? t("track.one"), distance: showDistance(run.plan.distance_m) })}</p>
          <Face elapsed_ms={null} />
          <CueLine run={run} cue={cue} />
          <Splits splits_ms={run.splits_ms} />
          <Signs />
          <SayTime />
        </div>
        <div class="watch__controls">
          <WatchButton tone="split" detail={t("watch.split_count", { n: run.splits_ms.length })} onPress={(at) => void stopwatch.split(at)}>
            {t("watch.split")}
          </WatchButton>
          <WatchButton tone="stop" detail={t("watch.stop_hint")} onPress={(at) => void stopwatch.stop(at)}>
            {t("watch.stop")}
          </WatchButton>
        </div>
      </div>
    </Screen>
  );
}

function CueLine({ run, cue }: { run: Run; cue: Cue | null }) {
  const target = targetMs(run.plan);
  if (cue !== null) {
    return <p class="watch__cue" role="status">{cue.kind === "target" ? t("watch.cue_target") : t("watch.cue_minute", { n: cue.at_ms / 60_000 })}</p>;
  }
  if (target === null || run.plan.target_speed_mpm === null) return null;
  return <p class="watch__target">{t("watch.target_passes", { speed: run.plan.target_speed_mpm, time: faceText(target) })}</p>;
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
