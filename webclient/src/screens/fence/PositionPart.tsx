import { BigButton, Button } from "../../parts/BigButton.tsx";
import { Notice } from "../../parts/Notice.tsx";
import { NO_POSITION, type Position } from "../../recording/position.ts";
import { showRough } from "../../units/index.ts";
import { t } from "../../words/index.ts";
import { type Standing, useStanding } from "./useStanding.ts";

/** Where a fence stands, in words: how well the phone knew, or that a hand put it there. */
export function positionWords({ latitude, position_accuracy_m, sketch_east_m }: Position): string {
  if (latitude !== null && position_accuracy_m !== null) return t("fence.position_is", { accuracy: showRough(position_accuracy_m) });
  return t(latitude === null && sketch_east_m === null ? "fence.position_none" : "fence.position_by_hand");
}

/** What stands on the button while somebody stands there. */
export function standingWords({ now }: Standing): string {
  return now ? t("fence.standing", { accuracy: showRough(now.position_accuracy_m), n: now.fixes }) : t("fence.standing_first");
}

/** The fence's place on the ground: one tap while standing at it, or taken away again. */
export function PositionPart({ position, onChange }: { position: Position; onChange: (position: Partial<Position>) => void }) {
  const standing = useStanding((_, { latitude, longitude, position_accuracy_m }) => onChange({ latitude, longitude, position_accuracy_m }));
  const known = position.latitude !== null || position.sketch_east_m !== null;
  return (
    <fieldset class="form">
      <legend class="choices__label">{t("fence.position")}</legend>
      <p role="status">{standing.at ? standingWords(standing) : positionWords(position)}</p>
      {standing.trouble && <Notice tone="attention" urgent><p>{standing.trouble}</p></Notice>}
      <BigButton onClick={() => (standing.at ? standing.finish() : standing.begin("here"))}>{t(standing.at ? "fence.stood" : "fence.stand")}</BigButton>
      {known && !standing.at && <p><Button tone="quiet" onClick={() => onChange(NO_POSITION)}>{t("fence.position_clear")}</Button></p>}
    </fieldset>
  );
}
