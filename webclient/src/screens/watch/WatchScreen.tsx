import "./watch.css";

import { useEffect, useState } from "preact/hooks";
import { useSearch } from "wouter-preact";

import { Button } from "../../parts/BigButton.tsx";
import { Notice } from "../../parts/Notice.tsx";
import { Screen } from "../../parts/Screen.tsx";
import { useRole } from "../../store/book.ts";
import { logbookId } from "../../store/place.ts";
import { showDistance } from "../../units/index.ts";
import { inside, t } from "../../words/index.ts";
import { PaceHelp } from "./TargetChoice.tsx";
import { Running } from "./Running.tsx";
import { SetUpForm } from "./SetUpForm.tsx";
import { ShortStop, Stopped } from "./Stopped.tsx";
import { stopwatch } from "./thisWatch.ts";
import { type SetUp, useSetUp } from "./useSetUp.ts";
import { useWatchKeys } from "./useWatchKeys.ts";
import { WatchButton } from "./WatchButton.tsx";

/** The stopwatch: set-up, run, stop. The result has its own screen. */
export function WatchScreen() {
  const logbook = logbookId.value;
  useEffect(() => {
    stopwatch.ready();
    void stopwatch.takeUp();
  }, [logbook]);
  useWatchKeys((key, timeStamp) => {
    if (stopwatch.run === null) return;
    void (key === "split" ? stopwatch.split(timeStamp) : stopwatch.stop(timeStamp));
  });
  const watch = stopwatch.watch.value;
  if (watch.phase === "running") return <Running run={watch.run} />;
  if (watch.phase === "short") return <ShortStop run={watch.run} />;
  if (watch.phase === "stopped") return <Stopped run={watch.run} />;
  return <Ready />;
}

function Ready() {
  const asked = new URLSearchParams(useSearch());
  const role = useRole();
  const setUp = useSetUp({ ...named("outing_id", asked.get("outing")), ...named("track_id", asked.get("track")) });
  if (role === "reader") return <Screen title={t("watch.title")}><p>{t("watch.may_not")}</p></Screen>;
  if (!setUp) return <Screen title={t("watch.title")}>{null}</Screen>;
  return <ReadyWith setUp={setUp} />;
}

function named<N extends string>(name: N, value: string | null): { [key in N]?: string } {
  return value === null ? {} : ({ [name]: value } as { [key in N]?: string });
}

function ReadyWith({ setUp }: { setUp: SetUp }) {
  const [changing, setChanging] = useState(setUp.plan === null);
  const open = changing || setUp.plan === null;
  const start = (timeStamp: number): void => {
    if (setUp.plan === null) return;
    void stopwatch.start(setUp.plan, timeStamp);
    void setUp.settleOuting();
  };
  useWatchKeys((key, timeStamp) => key === "start_stop" && start(timeStamp));
  const change = setUp.plan !== null && <Button onClick={() => setChanging(!open)}>{t(open ? "watch.plan_done" : "watch.plan_change")}</Button>;
  return (
    <Screen title={t("watch.title")} actions={change}>
      <div class="set-up">
        {setUp.plan === null && setUp.horses.length > 0 && <Notice><p>{t("watch.no_track")}</p></Notice>}
        {open ? <SetUpForm setUp={setUp} /> : <PlanSummary setUp={setUp} />}
      </div>
      {setUp.plan !== null && (
        <div class={open ? "watch__controls watch__controls--go watch__controls--low" : "watch__controls watch__controls--go"}>
          <WatchButton tone="go" detail={t("watch.go_hint")} onPress={start}>{t("watch.go")}</WatchButton>
        </div>
      )}
    </Screen>
  );
}

/** What is set, in a few words, so that START is the only thing in reach. */
function PlanSummary({ setUp: { choice, track, horse, levels } }: { setUp: SetUp }) {
  if (!track) return null;
  const level = levels.find((one) => one.id === choice.level_id);
  const speed = choice.target_speed_mpm;
  const start = t("watch.how_started", { start: t(`watch.start_${choice.start}`) });
  return (
    <div class="plan">
      <p>{horse?.body.name}</p>
      <p class="plan__track">{t("watch.track_chip", { name: track.body.name, distance: showDistance(track.body.distance_m) })}</p>
      <p class="plan__target">{speed === null ? t("watch.target_none") : level ? t("watch.target_of", { speed, level: level.name }) : t("watch.target_mpm", { speed })}</p>
      <p>{start}, {inside(t(choice.over_fences ? "watch.over_fences" : "watch.on_flat"))}</p>
      {speed !== null && <PaceHelp distance_m={track.body.distance_m} speed_mpm={speed} />}
    </div>
  );
}
