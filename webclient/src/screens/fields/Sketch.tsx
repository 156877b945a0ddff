import { useState } from "preact/hooks";

import { Icon } from "../../parts/Icon.tsx";
import type { SavedRecord } from "../../store/book.ts";
import { type Drawing, draw, nearest, roundLength } from "../../sketch/drawing.ts";
import type { Layout } from "../../sketch/layout.ts";
import { showRough, units } from "../../units/index.ts";
import { t } from "../../words/index.ts";
import "../../style/sketch.css";

interface Props {
  fences: SavedRecord<"fence">[];
  layout: Layout;
  /** The fence nearest to the tap, if one is near, and where the tap was, in m. */
  onTap: (id: string | null, spot: { x: number; y: number }) => void;
  chosen?: string | null;
}

/** Half of what a gloved finger needs, in px. */
const REACH = 32;
const WIDEST = 640;
const ZOOMS = [1, 2, 4];

/** A picture for eyes and fingers; the list beside it says the same in words. */
export function Sketch({ fences, layout, onTap, chosen }: Props) {
  const [zoom, setZoom] = useState(0);
  const drawing = draw([...layout.spots.values()], Math.min(document.documentElement.clientWidth - 32, WIDEST) * ZOOMS[zoom]!);
  const tapped = (event: MouseEvent) => {
    const box = (event.currentTarget as Element).getBoundingClientRect();
    const at = { x: ((event.clientX - box.x) * drawing.width) / box.width, y: ((event.clientY - box.y) * drawing.height) / box.height };
    onTap(nearest(layout.spots, drawing, at, REACH), drawing.back(at));
  };
  return (
    <div class="sketch">
      <div class="sketch__frame" tabIndex={0} role="group" aria-label={t("field.sketch")}>
        <svg class="sketch__picture" width={drawing.width} viewBox={`0 0 ${drawing.width} ${drawing.height}`} role="img" aria-label={t("field.sketch_of", { n: layout.spots.size })} onClick={tapped}>
          <Line fences={fences} layout={layout} drawing={drawing} />
          {fences.map((fence) => <Mark fence={fence} layout={layout} drawing={drawing} chosen={fence.record_id === chosen} key={fence.record_id} />)}
          <Frame drawing={drawing} />
        </svg>
      </div>
      <div class="buttons">
        <button type="button" class="icon-button" aria-label={t("field.smaller")} disabled={zoom === 0} onClick={() => setZoom(zoom - 1)}><Icon name="minus" /></button>
        <button type="button" class="icon-button" aria-label={t("field.larger")} disabled={zoom === ZOOMS.length - 1} onClick={() => setZoom(zoom + 1)}><Icon name="plus" /></button>
      </div>
    </div>
  );
}

/** From fence to fence in riding order. */
function Line({ fences, layout, drawing }: Pick<Props, "fences" | "layout"> & { drawing: Drawing }) {
  const spots = fences.flatMap(({ record_id }) => layout.spots.get(record_id) ?? []).map(drawing.at);
  return <polyline class="sketch__line" points={spots.map(({ x, y }) => `${x.toFixed(1)},${y.toFixed(1)}`).join(" ")} />;
}

function Mark({ fence, layout, drawing, chosen }: { fence: SavedRecord<"fence">; layout: Layout; drawing: Drawing; chosen: boolean }) {
  const spot = layout.spots.get(fence.record_id);
  if (!spot) return null;
  const { x, y } = drawing.at(spot);
  const label = fence.body.label;
  const left = x > drawing.width / 2;
  return (
    <g class={chosen ? "sketch__fence sketch__fence--chosen" : "sketch__fence"}>
      {spot.accuracy_m !== null && <circle class="sketch__doubt" cx={x} cy={y} r={spot.accuracy_m * drawing.scale} />}
      <rect class={spot.accuracy_m === null ? "sketch__mark sketch__mark--hand" : "sketch__mark"} x={x - 6} y={y - 6} width="12" height="12" />
      <text x={left ? x - 10 : x + 10} y={y + 5} text-anchor={left ? "end" : "start"}>{label.length > 14 ? `${label.slice(0, 13)}…` : label}</text>
    </g>
  );
}

/** The scale bar and which way is north. */
function Frame({ drawing: { width, height, scale } }: { drawing: Drawing }) {
  const bar_m = roundLength(Math.min(width, 320) / 3 / scale, units.value);
  return (
    <g class="sketch__scale">
      <path d={`M12 ${height - 16}v6h${(bar_m * scale).toFixed(1)}v-6`} />
      <text x="12" y={height - 20}>{showRough(bar_m)}</text>
      <path d={`M${width - 18} 34V10l-6 9m6-9l6 9`} />
      <text x={width - 18} y="48" text-anchor="middle">{t("field.north")}</text>
    </g>
  );
}
