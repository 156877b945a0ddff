import { useEffect, useRef, useState } from "preact/hooks";

import { LONGEST_MS, record, type Recorded, type Recording, recordsIn } from "../../media/recorder.ts";
import { BigButton } from "../../parts/BigButton.tsx";
import { toast } from "../../parts/toast.ts";
import { showTime } from "../../units/times.ts";
import { t } from "../../words/index.ts";

interface Props {
  type: NonNullable<ReturnType<typeof recordsIn>>;
  done: (found: Recorded | null) => Promise<void>;
}

const EVERY_MS = 200;

/** Listens from the moment it stands there until the big button, a minute, or leaving the screen. */
export function Recorder({ type, done }: Props) {
  const running = useRef<Recording | null>(null);
  const [seen, see] = useState<{ ms: number; level: number } | null>(null);
  useEffect(() => {
    let left = false;
    void record(type).then((recording) => {
      running.current = recording;
      if (left) recording.stop();
      void recording.done.then(done);
    }, () => (toast(t("media.no_microphone")), done(null)));
    const timer = setInterval(() => running.current && see({ ms: running.current.elapsedMs(), level: running.current.level() }), EVERY_MS);
    return () => {
      left = true;
      clearInterval(timer);
      running.current?.stop();
    };
  }, []);
  return (
    <div class="recorder" role="group" aria-label={t("media.voice")}>
      <p class="recorder__time" role="timer" aria-live="off">{t("media.time", { time: showTime(Math.floor((seen?.ms ?? 0) / 1000) * 1000), most: showTime(LONGEST_MS) })}</p>
      <meter aria-label={t("media.level")} min={0} max={1} value={seen?.level ?? 0} />
      <BigButton tone="stop" onClick={() => running.current?.stop()}>{seen ? t("media.stop") : t("media.starting")}</BigButton>
    </div>
  );
}
