import { useEffect } from "preact/hooks";
import { useLocation } from "wouter-preact";

import { faceText } from "../../pace/clockface.ts";
import { keepable, settleReading } from "../../pace/plausible.ts";
import { type Run, timeOf } from "../../pace/run.ts";
import { BigButton } from "../../parts/BigButton.tsx";
import { Notice } from "../../parts/Notice.tsx";
import { Screen } from "../../parts/Screen.tsx";
import { toast } from "../../parts/toast.ts";
import { useBusy } from "../../update/busy.ts";
import { t } from "../../words/index.ts";
import { Face } from "./Face.tsx";
import { Key } from "./Key.tsx";
import { stopwatch } from "./thisWatch.ts";
import { useWatchKeys } from "./useWatchKeys.ts";

async function throwAway(): Promise<void> {
  const run = await stopwatch.throwAway();
  if (run !== null) toast(t("watch.thrown_away"), () => stopwatch.bringBack(run));
}

/** Go on, or throw away: 1 or 2 on a clicker. */
function GoOnOrNot() {
  useWatchKeys((key) => void (key === 1 ? stopwatch.keepRunning() : key === 2 && throwAway()));
  return (
    <div class="lower">
      <BigButton tone="main" onClick={() => void stopwatch.keepRunning()}>{t("watch.keep_running")} <Key of="1" /></BigButton>
      <BigButton tone="stop" onClick={() => void throwAway()}>{t("watch.throw_away")} <Key of="2" /></BigButton>
    </div>
  );
}

/** A stop before anything can have been timed. Nothing is lost: the clock runs on underneath. */
export function ShortStop({ run }: { run: Run }) {
  useBusy();
  const { elapsed_ms } = timeOf(run);
  return (
    <Screen title={t("watch.title")} recording>
      <Face elapsed_ms={elapsed_ms} />
      <Notice tone="attention" urgent title={t("watch.short_title", { time: faceText(elapsed_ms) })}>
        <p>{t("watch.short")}</p>
      </Notice>
      <GoOnOrNot />
    </Screen>
  );
}

/** Stopped and on its way to the disk; the result opens when it is there. */
export function Stopped({ run }: { run: Run }) {
  useBusy();
  const [, navigate] = useLocation();
  const { elapsed_ms } = settleReading(timeOf(run), run.plan.distance_m).chosen;
  const saved = stopwatch.saved_id.value;
  useEffect(() => {
    if (saved !== null) navigate(`/watch/canter/${saved}`, { replace: true });
  }, [saved]);
  return (
    <Screen title={t("watch.title")} recording>
      <Face elapsed_ms={elapsed_ms} />
      {stopwatch.keeping.value === "unsaved" ? <NotSaved elapsed_ms={elapsed_ms} /> : keepable(elapsed_ms) ? <p class="quiet" role="status">{t("watch.saving")}</p> : <TooLong elapsed_ms={elapsed_ms} />}
    </Screen>
  );
}

function NotSaved({ elapsed_ms }: { elapsed_ms: number }) {
  return (
    <>
      <Notice tone="stop" urgent title={t("watch.not_saved_title")}><p>{t("watch.not_saved", { time: faceText(elapsed_ms) })}</p></Notice>
      <div class="lower"><BigButton tone="main" onClick={() => void stopwatch.saveAgain()}>{t("watch.save_again")}</BigButton></div>
    </>
  );
}

function TooLong({ elapsed_ms }: { elapsed_ms: number }) {
  return (
    <>
      <Notice tone="attention" urgent title={t("watch.too_long_title", { time: faceText(elapsed_ms) })}><p>{t("watch.too_long")}</p></Notice>
      <GoOnOrNot />
    </>
  );
}
