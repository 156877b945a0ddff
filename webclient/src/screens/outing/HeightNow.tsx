import { signal } from "@preact/signals";

import { DIMENSION_LIMITS_CM, STEP_FROM_CM } from "../../recording/dimensions.ts";
import { inOrderMade } from "../../recording/made.ts";
import type { SavedRecord } from "../../store/book.ts";
import { t } from "../../words/index.ts";
import { StepLength } from "../fence/StepLength.tsx";
import type { OutingView } from "./useOuting.ts";

interface Props {
  view: OutingView;
  fence: SavedRecord<"fence">;
}

/** Heights as poles stand now, by outing and fence: poles go up and down during a school. */
const heights = signal<ReadonlyMap<string, number>>(new Map());

const keyOf = ({ outing }: OutingView, fence: SavedRecord<"fence">): string => `${outing.record_id} ${fence.record_id}`;

/** The height of the next attempt in cm where it differs from the fence's own, else null. */
export function heightNow(view: OutingView, fence: SavedRecord<"fence">): number | null {
  const chosen = heights.value.get(keyOf(view, fence)) ?? lastHeight(view, fence);
  return chosen === fence.body.height_cm ? null : chosen;
}

function lastHeight(view: OutingView, fence: SavedRecord<"fence">): number | null {
  return inOrderMade(view.attempts).findLast((attempt) => attempt.body.fence_id === fence.record_id)?.body.height_cm ?? null;
}

export function HeightNow({ view, fence }: Props) {
  const change = (height_cm: number) => (heights.value = new Map(heights.value).set(keyOf(view, fence), height_cm));
  return (
    <StepLength
      label={t("outing.height_now")} value_cm={heightNow(view, fence) ?? fence.body.height_cm} limits_cm={DIMENSION_LIMITS_CM.height_cm}
      from_cm={fence.body.height_cm ?? STEP_FROM_CM.height_cm} onChange={change}
    />
  );
}
