import { Link } from "wouter-preact";

import { BigButton } from "../../parts/BigButton.tsx";
import { NotHere } from "../../parts/NotHere.tsx";
import { Notice } from "../../parts/Notice.tsx";
import { Screen } from "../../parts/Screen.tsx";
import type { SavedRecord } from "../../store/book.ts";
import { t } from "../../words/index.ts";
import { placeFence } from "../fence/placeFence.ts";
import { positionWords, standingWords } from "../fence/PositionPart.tsx";
import { type Standing, useStanding } from "../fence/useStanding.ts";
import { useField } from "./useField.ts";

/** On foot from fence to fence: at each one tap, and its place is kept. */
export function WalkScreen({ params }: { params: { id: string } }) {
  const view = useField(params.id);
  const standing = useStanding((id, { latitude, longitude, position_accuracy_m }) => void placeFence(id, { latitude, longitude, position_accuracy_m }));
  if (view === "missing") return <NotHere />;
  if (view === "loading") return <p class="screen quiet">{t("field.loading")}</p>;
  return (
    <Screen title={t("field.walk")} back={`/field/${params.id}`}>
      <p>{t("field.walk_about")}</p>
      {standing.trouble && <Notice tone="attention" urgent><p>{standing.trouble}</p></Notice>}
      <ol class="rows">{view.fences.map((fence) => <Line fence={fence} standing={standing} key={fence.record_id} />)}</ol>
      <p><Link class="big-button" href={`/fence/new?field=${params.id}`}>{t("field.add_fence")}</Link></p>
    </Screen>
  );
}

function Line({ fence, standing }: { fence: SavedRecord<"fence">; standing: Standing }) {
  const { record_id, body } = fence;
  const here = standing.at === record_id;
  return (
    <li class="row walk-row">
      <span class="row__words">
        <span class="row__title">{body.label}</span>
        <span class="row__detail" role="status">{here ? standingWords(standing) : positionWords(body)}</span>
      </span>
      <BigButton pressed={here} label={t("field.stand_at", { label: body.label })} onClick={() => (here ? standing.finish() : standing.begin(record_id))}>{t("field.stand")}</BigButton>
    </li>
  );
}
