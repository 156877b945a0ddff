import { useEffect, useRef } from "preact/hooks";

import { minutesSeconds } from "../../conditioning/phrases.ts";
import { placeAt, type SetRun, totalMs } from "../../conditioning/set.ts";
import { setRunner } from "./thisSet.ts";

/** Giant digits, drawn anew with each frame: what is left of this canter or walk, or the time since the work. */
export function CountDown({ run }: { run: SetRun }) {
  const digits = useRef<HTMLSpanElement>(null);
  useEffect(() => {
    let next = 0;
    const draw = (): void => {
      const text = textOf(run);
      if (digits.current && digits.current.textContent !== text) digits.current.textContent = text;
      setRunner.lookForCues();
      next = requestAnimationFrame(draw);
    };
    draw();
    return () => cancelAnimationFrame(next);
  }, [run]);
  // role timer is silent by itself: the time is said when asked for, not each second
  return <p class="face" role="timer" aria-live="off"><span class="face__whole" ref={digits} /></p>;
}

function textOf({ segments, ended_ms }: SetRun): string {
  const elapsed_ms = setRunner.elapsed()?.elapsed_ms ?? 0;
  if (ended_ms !== null) return minutesSeconds(elapsed_ms - totalMs(segments), Math.floor);
  return minutesSeconds(placeAt(segments, elapsed_ms)?.left_ms ?? 0);
}
