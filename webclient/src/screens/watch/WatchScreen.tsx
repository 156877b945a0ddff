import "./watch.css";

import { useEffect, useState } from "preact/hooks";
import { useSearch } from "wouter-preact";

import { civilDate } from "../../entries/entry.ts";
import type { Plan } from "../../pace/run.ts";
import { Button } from "../../parts/BigButton.tsx";
import { Notice } from "../../parts/Notice.tsx";
import { Screen } from "../../parts/Screen.tsx";
import { madeAt } from "../../recording/made.ts";
import { useRecord, useRole, useWhetherHere } from "../../store/book.ts";
import { logbookId } from "../../store/place.ts";
import { showDistance } from "../../units/index.ts";
import { inside, t } from "../../words/index.ts";
import { type Choice, repeatOf } from "./choice.ts";
import { SetWords, useRunsOfSet } from "./RunsOfSet.tsx";
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
  // before the first look at it: a canter that was saved and left is no longer this screen's
  useState(() => stopwatch.ready());
  useEffect(() => void stopwatch.takeUp(), [logbook]);
  useWatchKeys((key, timeStamp) => {
    if (stopwatch.run === null) return;
    void (key === "start_stop" ? stopwatch.stop(timeStamp) : stopwatch.split(timeStamp));
  });
  const watch = stopwatch.watch.value;
  if (watch.phase === "running") return <Running run={watch.run} />;
  if (watch.phase === "short") return <ShortStop run={watch.run} />;
  if (watch.phase === "stopped") return <Stopped run={watch.run} />;
  return <Ready />;
}

/** `again`: a canter whose set-up is taken once more. */
function Ready() {
  const asked = new URLSearchParams(useSearch());
  const again_id = asked.get("again") ?? "";
  const again = useRecord("timed_canter", again_id);
  const whether = useWhetherHere("timed_canter", again_id);
  if (useRole() === "reader") return <Screen title={t("watch.title")}><p>{t("watch.may_not")}</p></Screen>;
  if (again_id !== "" && !again && whether !== "missing") return <Screen title={t("watch.title")}>{null}</Screen>;
  const choice = again
    ? repeatOf(again, civilDate(new Date(madeAt(again))) === civilDate(new Date()))
    : { ...named("outing_id", asked.get("outing")), ...named("track_id", asked.get("track")) };
  return <ReadyFor asked={choice} key={again_id} />;
}

function ReadyFor({ asked }: { asked: Partial<Choice> }) {
  const setUp = useSetUp(asked);
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
        {setUp.plan?.set_id && <SetSoFar plan={setUp.plan} set_id={setUp.plan.set_id} />}
      </div>
      {setUp.plan !== null && (
        <div class={open ? "watch__controls watch__controls--go watch__controls--low" : "watch__controls watch__controls--go"}>
          <WatchButton tone="go" keys={t("watch.key_space")} detail={setUp.plan.countdown_s ? t("watch.go_countdown", { n: setUp.plan.countdown_s }) : t("watch.go_hint")} onPress={start}>{t("watch.go")}</WatchButton>
        </div>
      )}
    </Screen>
  );
}

/** The set that the next run goes on with. */
function SetSoFar({ plan, set_id }: { plan: Plan; set_id: string }) {
  const runs = useRunsOfSet(plan.outing_id, set_id);
  if (!runs?.length) return null;
  return <p>{t("watch.set_next", { n: runs.length + 1 })} <SetWords runs={runs} target_mpm={plan.target_speed_mpm} /></p>;
}

/** What is set, in a few words, so that START is the only thing in reach. */
function PlanSummary({ setUp: { choice, track, horse, levels } }: { setUp: SetUp }) {
  if (!track) return null;
  const level = levels.find((one) => one.id === choice.level_id);
  const speed = choice.target_speed_mpm;
  const standing = choice.start === "standing" && choice.countdown_s !== null;
  const start = standing ? t("watch.countdown_start", { n: choice.countdown_s! }) : t("watch.how_started", { start: t(`watch.start_${choice.start}`) });
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
