import { useState } from "preact/hooks";
import { useLocation } from "wouter-preact";

import { question } from "../../pace/plausible.ts";
import { rounded } from "../../pace/phrases.ts";
import { speed } from "../../pace/speed.ts";
import { Button } from "../../parts/BigButton.tsx";
import { Notice } from "../../parts/Notice.tsx";
import type { SavedRecord } from "../../store/book.ts";
import { t } from "../../words/index.ts";
import { stopwatch } from "./thisWatch.ts";

/** Asks about a speed no horse has. Right after the stop the clock is still there, and the run can go on. */
export function OddNotice({ canter: { body, record_id } }: { canter: SavedRecord<"timed_canter"> }) {
  const [answered, setAnswered] = useState(false);
  const [, navigate] = useLocation();
  const odd = question(body.elapsed_ms, body.distance_m);
  if (answered || (odd !== "too_fast" && odd !== "too_slow")) return null;
  const which = odd === "too_fast" ? "fast" : "slow";
  const fresh = stopwatch.saved_id.value === record_id;
  const goOn = async (): Promise<void> => {
    await stopwatch.keepRunning();
    navigate("/watch", { replace: true });
  };
  const actions = (
    <>
      {fresh && <Button tone="main" onClick={() => void goOn()}>{t("watch.keep_running")}</Button>}
      <Button onClick={() => setAnswered(true)}>{t("watch.odd_keep")}</Button>
    </>
  );
  return (
    <Notice tone="attention" urgent title={t(`watch.odd_${which}_title`, { speed: rounded(speed(body).speed_mpm) })} actions={actions}>
      <p>{t(`watch.odd_${which}`)}</p>
    </Notice>
  );
}
