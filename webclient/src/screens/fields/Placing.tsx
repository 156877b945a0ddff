import { useEffect, useRef, useState } from "preact/hooks";

import { BigButton } from "../../parts/BigButton.tsx";
import { NO_POSITION, type Position } from "../../recording/position.ts";
import type { SavedRecord } from "../../store/book.ts";
import { type Layout, layOut, putAt } from "../../sketch/layout.ts";
import { showRough, units } from "../../units/index.ts";
import { t } from "../../words/index.ts";
import { placeFence } from "../fence/placeFence.ts";
import { Sketch } from "./Sketch.tsx";

const WAYS = { n: [0, 1], w: [-1, 0], e: [1, 0], s: [0, -1] } as const;
const KEYS: Record<string, keyof typeof WAYS> = { ArrowUp: "n", ArrowLeft: "w", ArrowRight: "e", ArrowDown: "s" };
/** So long after the last step it is kept, as one change and not as twenty. */
const SETTLED_MS = 700;

/** Putting fences where they stand by hand: a tap on the sketch, or steps with buttons or arrow keys. */
export function Placing({ fences, layout }: { fences: SavedRecord<"fence">[]; layout: Layout }) {
  const [chosen, setChosen] = useState(fences.find(({ record_id }) => !layout.spots.has(record_id))?.record_id ?? fences[0]!.record_id);
  const [moved, setMoved] = useMoved();
  const shown = fences.map((fence) => (moved?.id === fence.record_id ? { ...fence, body: { ...fence.body, ...moved.position } } : fence));
  const now = moved ? layOut(shown) : layout;
  const fence = shown.find(({ record_id }) => record_id === chosen)!;
  const spot = now.spots.get(chosen);
  const step_m = units.value === "metric" ? 5 : 5 * 0.9144;
  const put = (x: number, y: number) => setMoved({ id: chosen, position: putAt(fence.body, now, spot, x, y) });
  const step = (way: keyof typeof WAYS) => put((spot?.x ?? 0) + WAYS[way][0] * step_m, (spot?.y ?? 0) + WAYS[way][1] * step_m);
  const key = (event: KeyboardEvent) => {
    const way = KEYS[event.key];
    if (!way || (event.target as Element).tagName === "SELECT") return;
    event.preventDefault();
    step(way);
  };
  return (
    <div class="form" onKeyDown={key}>
      <p>{t("field.place_about")}</p>
      <label class="text-box">
        <span class="text-box__label">{t("field.place_which")}</span>
        <select value={chosen} onChange={(event) => setChosen(event.currentTarget.value)}>
          {fences.map(({ record_id, body }) => <option value={record_id} key={record_id}>{body.label}</option>)}
        </select>
      </label>
      <Sketch fences={shown} layout={now} chosen={chosen} onTap={(_, { x, y }) => put(x, y)} />
      <div class="place-steps" role="group" aria-label={t("field.place_steps", { label: fence.body.label, step: showRough(step_m) })}>
        {(["n", "w", "e", "s"] as const).map((way) => <BigButton label={t("field.place_step", { step: showRough(step_m), compass: t(`compass.${way}`) })} onClick={() => step(way)} key={way}>{t(`compass.${way}`)}</BigButton>)}
      </div>
      {spot && <p><BigButton tone="quiet" onClick={() => setMoved({ id: chosen, position: NO_POSITION })}>{t("fence.position_clear")}</BigButton></p>}
    </div>
  );
}

interface Moved {
  id: string;
  position: Position;
}

/** What was moved and not yet kept; kept soon after, and at once when another fence is moved or the screen left. */
function useMoved(): [Moved | null, (moved: Moved) => void] {
  const [moved, setMoved] = useState<Moved | null>(null);
  const waiting = useRef<{ moved: Moved; timer: ReturnType<typeof setTimeout> } | null>(null);
  const keep = () => {
    if (!waiting.current) return;
    const { moved, timer } = waiting.current;
    clearTimeout(timer);
    waiting.current = null;
    // the list needs a moment to say the same
    void placeFence(moved.id, moved.position).then(() => setTimeout(setMoved, SETTLED_MS, (now: Moved | null) => (now === moved ? null : now)));
  };
  useEffect(() => {
    addEventListener("pagehide", keep);
    return () => {
      removeEventListener("pagehide", keep);
      keep();
    };
  }, []);
  const change = (next: Moved) => {
    if (waiting.current && waiting.current.moved.id !== next.id) keep();
    clearTimeout(waiting.current?.timer);
    waiting.current = { moved: next, timer: setTimeout(keep, SETTLED_MS) };
    setMoved(next);
  };
  return [moved, change];
}
