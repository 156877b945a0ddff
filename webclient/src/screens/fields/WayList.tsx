import { Link } from "wouter-preact";

import { Icon } from "../../parts/Icon.tsx";
import type { SavedRecord } from "../../store/book.ts";
import { type Layout, type Spot, wayTo } from "../../sketch/layout.ts";
import { showRough } from "../../units/index.ts";
import { t } from "../../words/index.ts";
import { positionWords } from "../fence/PositionPart.tsx";

interface Props {
  fences: SavedRecord<"fence">[];
  layout: Layout;
  hrefOf: (id: string) => string;
}

/** What the picture shows, in words: how far and which way from each fence to the next in riding order. */
export function WayList({ fences, layout, hrefOf }: Props) {
  let before: { label: string; spot: Spot } | null = null;
  return (
    <ol class="rows">
      {fences.map(({ record_id, body }) => {
        const spot = layout.spots.get(record_id);
        const way = spot && before ? wayWords(before.label, before.spot, spot) : null;
        if (spot) before = { label: body.label, spot };
        const loose = !spot && body.sketch_east_m !== null;
        return (
          <li class="row" key={record_id}>
            <Link class="row__link" href={hrefOf(record_id)}>
              <span class="row__words">
                <span class="row__title">{body.label}</span>
                <span class="row__detail">{[way, loose ? t("field.loose") : positionWords(body)].filter(Boolean).join(" · ")}</span>
              </span>
              <Icon name="forward" />
            </Link>
          </li>
        );
      })}
    </ol>
  );
}

function wayWords(label: string, from: Spot, to: Spot): string {
  const { distance_m, bearing_deg, compass } = wayTo(from, to);
  return t("field.way", { distance: showRough(distance_m), compass: t(`compass.${compass}`), degrees: Math.round(bearing_deg) % 360, label });
}
