import "./watch.css";

import { useEffect, useState } from "preact/hooks";
import { Link, useLocation } from "wouter-preact";

import { faceText } from "../../pace/clockface.ts";
import { Icon } from "../../parts/Icon.tsx";
import { logbookId, openDb } from "../../store/place.ts";
import { t } from "../../words/index.ts";
import { stopwatch } from "./thisWatch.ts";

/** Above every other screen while a run is on: the time, and the way back to STOP. */
export function WatchBar() {
  const [path] = useLocation();
  const place = openDb.value === null ? null : logbookId.value;
  useEffect(() => {
    if (place !== null) void stopwatch.takeUp().catch((error) => console.error("a run could not be taken up", error));
  }, [place]);
  if (stopwatch.watch.value.phase !== "running" || path === "/watch") return null;
  return (
    <Link class="watch-bar" href="/watch">
      <Icon name="watch" />
      <span>{t("watch.running")}</span>
      <Seconds />
    </Link>
  );
}

function Seconds() {
  const [ms, setMs] = useState(0);
  useEffect(() => {
    const draw = (): void => setMs(stopwatch.elapsed()?.elapsed_ms ?? 0);
    draw();
    const timer = setInterval(draw, 200);
    return () => clearInterval(timer);
  }, []);
  return <span class="watch-bar__time" role="timer" aria-live="off">{ms < 0 ? `−${Math.ceil(-ms / 1000)}` : faceText(ms)}</span>;
}
