import { useEffect, useState } from "preact/hooks";
import { useLocation } from "wouter-preact";

import { minutesSeconds } from "../../conditioning/phrases.ts";
import { canterNumber, type Place, placeAt, type Segment, type SetRun, totalMs } from "../../conditioning/set.ts";
import { secondsPer100m } from "../../pace/markers.ts";
import { tenths } from "../../pace/phrases.ts";
import { Button } from "../../parts/BigButton.tsx";
import { Icon } from "../../parts/Icon.tsx";
import { Screen } from "../../parts/Screen.tsx";
import { toast } from "../../parts/toast.ts";
import { useBusy } from "../../update/busy.ts";
import { t } from "../../words/index.ts";
import { useWatchKeys } from "../watch/useWatchKeys.ts";
import { WatchButton } from "../watch/WatchButton.tsx";
import { BeforeNext } from "./BeforeNext.tsx";
import { CountDown } from "./CountDown.tsx";
import { SetStrip } from "./SetStrip.tsx";
import { setRunner } from "./thisSet.ts";
import { useCue } from "./useCue.ts";

const CUE_SHOWN_MS = 6000;
const LONGER_MS = 60_000;
const SAID_SHOWN_MS = 8000;

/** A set in progress: what now, how long still, what next; the taps for going early or walking longer. */
export function RunningSet({ run }: { run: SetRun }) {
  useBusy();
  const [, navigate] = useLocation();
  useWatchKeys((key, timeStamp) => void (key === "start_stop" || key === 1 ? goOn(timeStamp, navigate) : key === 2 && longer(timeStamp)));
  const elapsed = setRunner.elapsed();
  const place = elapsed && placeAt(run.segments, elapsed.elapsed_ms);
  if (!elapsed || !place) return <Screen title={t("conditioning.title")} recording>{null}</Screen>;
  const walking = place.segment.kind !== "canter";
  return (
    <Screen title={t("conditioning.title")} recording actions={<Button tone="quiet" onClick={(event) => void end(event.timeStamp, navigate)}>{t("conditioning.end")}</Button>}>
      <div class={walking ? "watch" : "watch watch--canter"}>
        <div class="watch__read">
          <p class="set-now">{nowWords(run, place)}</p>
          <CountDown run={run} />
          {!walking && <SpeedLine speed_mpm={run.plan.speed_mpm ?? null} />}
          <CueLine next={nextWords(run, place)} />
          <SetStrip segments={run.segments} elapsed_ms={elapsed.elapsed_ms} />
          <Signs clock={elapsed.clock} />
          <SayWhere run={run} />
          {place.segment.kind === "walk" && <BeforeNext />}
        </div>
        <div class="watch__controls set-controls">
          {walking && <WatchButton tone="split" keys="2" detail={t("conditioning.longer_hint")} onPress={(at) => void longer(at)}>{t("conditioning.longer")}</WatchButton>}
          <WatchButton tone="stop" keys={t("watch.key_space")} onPress={(at) => void goOn(at, navigate)}>{t(onWords(run, place))}</WatchButton>
        </div>
      </div>
    </Screen>
  );
}

/** How fast, and what that is on the ground. */
function SpeedLine({ speed_mpm }: { speed_mpm: number | null }) {
  if (speed_mpm === null) return null;
  return <p class="watch__what">{t("conditioning.ride_at", { speed: speed_mpm, seconds: tenths(secondsPer100m(speed_mpm)) })}</p>;
}

type Navigate = (to: string, how: { replace: boolean }) => void;

const isLast = (run: SetRun, { n }: Place): boolean => n === run.segments.length - 1;

function onWords(run: SetRun, place: Place): "conditioning.canter_now" | "conditioning.walk_now" | "conditioning.finish_now" {
  if (place.segment.kind !== "canter") return "conditioning.canter_now";
  return isLast(run, place) ? "conditioning.finish_now" : "conditioning.walk_now";
}

function nowWords(run: SetRun, { n, segment }: Place): string {
  if (segment.kind !== "canter") return t(`conditioning.now_${segment.kind}`);
  return t("conditioning.now_canter", { n: canterNumber(run.segments, n), of: run.plan.canters });
}

function nextWords({ segments }: SetRun, { n }: Place): string {
  const next: Segment | undefined = segments[n + 1];
  if (!next) return t("conditioning.then_over");
  const length = minutesSeconds(next.length_ms);
  return next.kind === "canter" ? t("conditioning.then_canter", { n: canterNumber(segments, n + 1), length }) : t("conditioning.then_walk", { length });
}

// The tap that ends the last canter opens the set's own screen: its undo leads back.
async function goOn(timeStamp: number, navigate: Navigate): Promise<void> {
  const before = await setRunner.on(timeStamp);
  if (before) toast(t("conditioning.on_done"), () => takeBackTap(before, navigate));
}

async function takeBackTap(before: SetRun, navigate: Navigate): Promise<void> {
  await (setRunner.run.value === null ? setRunner.bringBack(before) : setRunner.undo(before));
  navigate("/conditioning", { replace: true });
}

async function longer(timeStamp: number): Promise<void> {
  const before = await setRunner.longer(timeStamp, LONGER_MS);
  if (before) toast(t("conditioning.longer_done"), () => setRunner.undo(before));
}

async function end(timeStamp: number, navigate: Navigate): Promise<void> {
  const before = await setRunner.end(timeStamp);
  if (before) toast(t(setRunner.run.value === null ? "conditioning.ended_nothing" : "conditioning.ended"), () => takeBackTap(before, navigate));
}

function CueLine({ next }: { next: string }) {
  const cue = useCue(CUE_SHOWN_MS);
  if (cue !== null) return <p class="watch__cue" role="status">{t(`conditioning.cue_${cue.kind}`)}</p>;
  return <p class="watch__target">{next}</p>;
}

/** Whether the set is kept, whether the screen stays on, and which clock counts: as on the stopwatch. */
function Signs({ clock }: { clock: "agree" | "slept" | "wall_changed" | "restored" }) {
  const keeping = setRunner.keeping.value;
  return (
    <ul class="watch__signs">
      {keeping === "unsaved"
        ? <li class="watch__sign watch__sign--stop"><Icon name="stop" />{t("watch.not_kept")}</li>
        : <li class="watch__sign">{keeping === "kept" && <Icon name="tick" />}{t(keeping === "kept" ? "watch.kept" : "watch.keeping")}</li>}
      {setRunner.wakefulness.value === "refused" && <li class="watch__sign"><Icon name="attention" />{t("watch.screen_may_turn_off")}</li>}
      {clock !== "agree" && <li class="watch__sign"><Icon name="attention" />{t(`watch.now_${clock}`)}</li>}
    </ul>
  );
}

/** Says where the set is, once, to whoever asks: the running time itself stays silent. */
function SayWhere({ run }: { run: SetRun }) {
  const [said, setSaid] = useState("");
  useEffect(() => {
    if (said === "") return;
    const timer = setTimeout(() => setSaid(""), SAID_SHOWN_MS);
    return () => clearTimeout(timer);
  }, [said]);
  const tell = (): void => {
    const elapsed_ms = setRunner.elapsed()?.elapsed_ms ?? 0;
    const place = placeAt(run.segments, elapsed_ms);
    if (place) setSaid(t("conditioning.said", { now: nowWords(run, place), left: minutesSeconds(place.left_ms), next: nextWords(run, place) }));
  };
  return (
    <p class="watch__say">
      <Button onClick={tell}>{t("conditioning.say")}</Button>
      {said === "" && <span>{t("conditioning.done_of", { done: minutesSeconds(setRunner.elapsed()?.elapsed_ms ?? 0, Math.floor), total: minutesSeconds(totalMs(run.segments)) })}</span>}
      <span aria-live="polite">{said}</span>
    </p>
  );
}
