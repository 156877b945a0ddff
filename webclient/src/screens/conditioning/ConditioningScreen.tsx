import "../watch/watch.css";
import "../../style/conditioning.css";

import { useEffect } from "preact/hooks";
import { Link, useLocation, useSearch } from "wouter-preact";

import { minutesSeconds } from "../../conditioning/phrases.ts";
import { segmentsOf, type SetPlan, type SetRun, totalMs } from "../../conditioning/set.ts";
import { BigButton } from "../../parts/BigButton.tsx";
import { Notice } from "../../parts/Notice.tsx";
import { Screen } from "../../parts/Screen.tsx";
import { useRole } from "../../store/book.ts";
import { logbookId } from "../../store/place.ts";
import { useBusy } from "../../update/busy.ts";
import { t } from "../../words/index.ts";
import { useWatchKeys } from "../watch/useWatchKeys.ts";
import { WatchButton } from "../watch/WatchButton.tsx";
import { Before } from "./Before.tsx";
import { PlanForm } from "./PlanForm.tsx";
import { RunningSet } from "./RunningSet.tsx";
import { setRunner } from "./thisSet.ts";
import { type SetUp, useSetUp } from "./useSetUp.ts";

/** An interval set: its plan, the set itself by cues, and then the screen of the set with its recovery. */
export function ConditioningScreen() {
  const logbook = logbookId.value;
  useEffect(() => void setRunner.takeUp().catch((error) => console.error("a set could not be taken up", error)), [logbook]);
  const run = setRunner.run.value;
  if (run === null) return <Ready />;
  return run.ended_ms === null ? <RunningSet run={run} /> : <Over run={run} />;
}

function Ready() {
  const role = useRole();
  const setUp = useSetUp(new URLSearchParams(useSearch()).get("outing"));
  if (role === "reader") return <Screen title={t("conditioning.title")} back="/"><p>{t("conditioning.may_not")}</p></Screen>;
  if (!setUp) return <Screen title={t("conditioning.title")} back="/">{null}</Screen>;
  if (setUp.horses.length === 0) return <NoHorses />;
  return <ReadyWith setUp={setUp} />;
}

function NoHorses() {
  return (
    <Screen title={t("conditioning.title")} back="/">
      <Notice tone="attention" actions={<Link class="button" href="/">{t("conditioning.add_horse")}</Link>}><p>{t("conditioning.no_horses")}</p></Notice>
    </Screen>
  );
}

function ReadyWith({ setUp }: { setUp: SetUp }) {
  const { plan, fallen } = setUp;
  const start = (timeStamp: number): void => {
    if (plan === null || fallen) return;
    void setRunner.start(plan, timeStamp);
    void setUp.settleOuting().catch(() => undefined); // the frame says why
  };
  useWatchKeys((key, timeStamp) => key === "start_stop" && start(timeStamp));
  return (
    <Screen title={t("conditioning.title")} back={setUp.outing ? `/outing/${setUp.outing.record_id}` : "/"}>
      <Before setUp={setUp} />
      <PlanForm setUp={setUp} />
      {!fallen && <Go plan={plan} onStart={start} />}
      <p><Link href={`/conditioning/memory${setUp.outing ? `?outing=${setUp.outing.record_id}` : ""}`}>{t("conditioning.memory_door")}</Link></p>
    </Screen>
  );
}

function Go({ plan, onStart }: { plan: SetPlan | null; onStart: (timeStamp: number) => void }) {
  if (plan === null) return <Notice><p>{t("conditioning.no_pair")}</p></Notice>;
  const total = minutesSeconds(totalMs(segmentsOf(plan)));
  return (
    <div class="set-go">
      <WatchButton tone="go" onPress={onStart} keys={t("watch.key_space")} detail={t(plan.walk_first_s > 0 ? "conditioning.go_walk" : "conditioning.go_canter", { total })}>
        {t("conditioning.go")}
      </WatchButton>
    </div>
  );
}

/** Over and on its way to the disk; the set's own screen opens when it is there. */
function Over({ run }: { run: SetRun }) {
  useBusy();
  const [, navigate] = useLocation();
  const saved = run.saved_changes === run.changes;
  useEffect(() => {
    if (saved) navigate(`/conditioning/set/${run.id}`, { replace: true });
  }, [saved]);
  return (
    <Screen title={t("conditioning.title")} recording>
      {setRunner.keeping.value === "unsaved" ? <NotSaved /> : <p class="quiet" role="status">{t("conditioning.saving")}</p>}
    </Screen>
  );
}

function NotSaved() {
  return (
    <>
      <Notice tone="stop" urgent title={t("conditioning.not_saved_title")}><p>{t("conditioning.not_saved")}</p></Notice>
      <div class="lower"><BigButton tone="main" onClick={() => void setRunner.saveIfOver()}>{t("conditioning.save_again")}</BigButton></div>
    </>
  );
}
