import { useEffect, useRef, useState } from "preact/hooks";

import { face, spokenParts } from "../../pace/clockface.ts";
import { Button } from "../../parts/BigButton.tsx";
import { decimal } from "../../words/decimal.ts";
import { t } from "../../words/index.ts";
import { stopwatch } from "./thisWatch.ts";

/** The time in giant digits; `elapsed_ms` null means: running, draw it anew with each frame. */
export function Face({ elapsed_ms }: { elapsed_ms: number | null }) {
  const digits = useRef<HTMLSpanElement>(null);
  const tenths = useRef<HTMLSpanElement>(null);
  useEffect(() => {
    const draw = (ms: number): void => {
      const shown = ms < 0 ? { whole: String(Math.ceil(-ms / 1000)), tenths: "" } : face(ms);
      if (digits.current) write(digits.current, shown.whole);
      if (tenths.current) write(tenths.current, shown.tenths && decimal(`.${shown.tenths}`));
    };
    if (elapsed_ms !== null) return draw(elapsed_ms);
    const calm = matchMedia("(prefers-reduced-motion: reduce)").matches;
    return eachFrame(() => {
      draw(stopwatch.elapsed()?.elapsed_ms ?? 0);
      if (calm && tenths.current) write(tenths.current, ""); // they flicker; the result has them
      stopwatch.lookForCues();
    });
  }, [elapsed_ms]);
  // role timer is silent by itself: the time is said when asked for, not each second
  return (
    <p class="face" role="timer" aria-live="off">
      <span class="face__whole" ref={digits} />
      <span class="face__tenths" ref={tenths} />
    </p>
  );
}

function write(place: HTMLElement, text: string): void {
  if (place.textContent !== text) place.textContent = text;
}

function eachFrame(draw: () => void): () => void {
  let next = 0;
  const frame = (): void => {
    draw();
    next = requestAnimationFrame(frame);
  };
  frame();
  return () => cancelAnimationFrame(next);
}

/** Says the time once, to whoever asks: for screen readers, and shown for everybody. */
export function SayTime() {
  const [said, setSaid] = useState("");
  const say = (): void => {
    const { minutes, seconds } = spokenParts(stopwatch.elapsed()?.elapsed_ms ?? 0);
    setSaid(minutes > 0 ? t("watch.spoken", { minutes, seconds }) : t("watch.spoken_seconds", { seconds }));
  };
  return (
    <p class="watch__say">
      <Button onClick={say}>{t("watch.say_time")}</Button>
      <span aria-live="polite">{said}</span>
    </p>
  );
}
