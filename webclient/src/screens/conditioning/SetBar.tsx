import { useEffect, useState } from "preact/hooks";
import { Link, useLocation } from "wouter-preact";

import { minutesSeconds } from "../../conditioning/phrases.ts";
import { placeAt, totalMs } from "../../conditioning/set.ts";
import { Icon } from "../../parts/Icon.tsx";
import { logbookId, openDb } from "../../store/place.ts";
import { t } from "../../words/index.ts";
import { setRunner } from "./thisSet.ts";

/** Above every other screen while a set is on or its recovery is counted: the time, and the way back. */
export function SetBar() {
  const [path] = useLocation();
  const place = openDb.value === null ? null : logbookId.value;
  useEffect(() => {
    if (place !== null) void setRunner.takeUp().catch((error) => console.error("a set could not be taken up", error));
  }, [place]);
  const run = setRunner.run.value;
  if (run === null || path.startsWith("/conditioning")) return null;
  return (
    <Link class="watch-bar" href={run.ended_ms === null ? "/conditioning" : `/conditioning/set/${run.id}`}>
      <Icon name="watch" />
      <span>{t(run.ended_ms === null ? "conditioning.bar_running" : "conditioning.bar_recovery")}</span>
      <Time />
    </Link>
  );
}

/** What is left of the canter or walk; after the work the time since. */
function Time() {
  const [, setBeat] = useState(0);
  useEffect(() => {
    const timer = setInterval(() => setBeat((n) => n + 1), 250);
    return () => clearInterval(timer);
  }, []);
  const [run, judged] = [setRunner.run.value, setRunner.elapsed()];
  if (run === null || judged === null) return null;
  const place = run.ended_ms === null ? placeAt(run.segments, judged.elapsed_ms) : null;
  const text = place ? minutesSeconds(place.left_ms) : minutesSeconds(judged.elapsed_ms - totalMs(run.segments), Math.floor);
  return <span class="watch-bar__time" role="timer" aria-live="off">{text}</span>;
}
