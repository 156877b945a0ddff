import { useEffect } from "preact/hooks";

import type { SetCue } from "../../conditioning/cues.ts";
import { setRunner } from "./thisSet.ts";

/** The cue of this moment; it steps back after `shown_ms`. */
export function useCue(shown_ms: number): SetCue | null {
  const cue = setRunner.cue.value;
  useEffect(() => {
    if (cue === null) return;
    const timer = setTimeout(() => void (setRunner.cue.value = null), shown_ms);
    return () => clearTimeout(timer);
  }, [cue]);
  return cue;
}
