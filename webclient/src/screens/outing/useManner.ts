// The presentation and attitude that the next tap at a fence will carry: what the person chose just now, else
// what was said the last time this pair met it.

import { signal } from "@preact/signals";
import { useEffect, useMemo, useState } from "preact/hooks";

import type { Attempt } from "../../entries/bodies.ts";
import type { Letter } from "../../recording/combination.ts";
import type { Made } from "../../recording/made.ts";
import { type Manner, outingsOfHorse, rememberedManner } from "../../recording/manner.ts";
import { here, logbookId } from "../../store/place.ts";
import { findRecords } from "../../store/read.ts";
import type { OutingView } from "./useOuting.ts";

interface Past {
  outings: Set<string>;
  attempts: Made<Attempt>[];
}

const pasts = new Map<string, Past>();

/** Chosen and not yet tapped, by outing, fence and element. */
const chosen = signal<ReadonlyMap<string, Manner>>(new Map());

export function useManner(view: OutingView, fence_id: string, element: Letter | null): [Manner, (manner: Manner) => void] {
  const past = usePast(view.outing.body.horse_id, fence_id);
  const key = [view.outing.record_id, fence_id, element].join(" ");
  const atFence = view.attempts.filter((attempt) => attempt.body.fence_id === fence_id);
  const remembered = useMemo(() => remember(past, atFence, view.outing.record_id, element), [past, key, atFence.length, atFence.at(-1)]);
  const setManner = (manner: Manner) => (chosen.value = new Map(chosen.value).set(key, manner));
  return [chosen.value.get(key) ?? remembered, setManner];
}

/** The choice went into an attempt: from now on the attempt remembers it. */
export function mannerUsed(outing_id: string, fence_id: string, element: Letter | null): void {
  const left = new Map(chosen.value);
  left.delete([outing_id, fence_id, element].join(" "));
  chosen.value = left;
}

function remember(past: Past | undefined, today: readonly Made<Attempt>[], outing_id: string, element: Letter | null): Manner {
  const before = (past?.attempts ?? []).filter((attempt) => attempt.body.outing_id !== outing_id);
  return rememberedManner([...before, ...today], new Set([...(past?.outings ?? []), outing_id]), element);
}

/** Read once when the fence is chosen: today's attempts come from the outing itself. */
function usePast(horse_id: string, fence_id: string): Past | undefined {
  const key = [logbookId.value, horse_id, fence_id].join(" ");
  const [past, setPast] = useState<Past | undefined>(pasts.get(key));
  useEffect(() => {
    let asked = true;
    setPast(pasts.get(key));
    void readPast(horse_id, fence_id).then((found) => {
      pasts.set(key, found);
      if (asked) setPast(found);
    });
    return () => void (asked = false);
  }, [key]);
  return past;
}

async function readPast(horse_id: string, fence_id: string): Promise<Past> {
  const [outings, attempts] = await Promise.all([
    findRecords(here(), "outing", { horse_id }),
    findRecords(here(), "attempt", { fence_id }),
  ]);
  return { outings: outingsOfHorse(outings as never, horse_id), attempts: attempts as never };
}
