// Somebody stands at a fence: fixes are gathered for some seconds and become one position. Leaving the screen
// early keeps what there is.

import { useEffect, useRef, useState } from "preact/hooks";

import { type Fix, type NoFix, watchFixes } from "../../location/fixes.ts";
import { type Averaged, average } from "../../sketch/average.ts";
import { t } from "../../words/index.ts";

/** After the first fix; longer hardly helps, for the errors of one minute are much alike. */
const STAND_MS = 10_000;

export interface Standing {
  /** What the fixes so far come to; null before the first. */
  now: Averaged | null;
  /** Which place is being stood at. */
  at: string | null;
  trouble: string | null;
  begin: (at: string) => void;
  /** Enough: keep what there is. */
  finish: () => void;
}

export function useStanding(onPlace: (at: string, found: Averaged) => void): Standing {
  const [at, setAt] = useState<string | null>(null);
  const [now, setNow] = useState<Averaged | null>(null);
  const [trouble, setTrouble] = useState<string | null>(null);
  const ending = useRef<(() => void) | null>(null);
  const begin = (place: string) => {
    ending.current?.();
    const fixes: Fix[] = [];
    let timer: ReturnType<typeof setTimeout> | undefined;
    const gather = (fix: Fix) => {
      fixes.push(fix);
      setNow(average(fixes));
      timer ??= setTimeout(end, STAND_MS);
    };
    const refuse = ({ reason, phrase }: NoFix) => {
      if (reason === "not_found" && fixes.length) return;
      setTrouble(t(phrase.key as "location.refused"));
      queueMicrotask(end);
    };
    const end = () => {
      stop();
      clearTimeout(timer);
      ending.current = null;
      setAt(null);
      const found = average(fixes);
      if (found) onPlace(place, found);
    };
    setAt(place);
    setNow(null);
    setTrouble(null);
    ending.current = end;
    const stop = watchFixes(gather, refuse);
  };
  useEffect(() => () => ending.current?.(), []);
  return { now, at, trouble, begin, finish: () => ending.current?.() };
}
