import { BigButton } from "../../parts/BigButton.tsx";
import { placeAt } from "../../recording/combination.ts";
import { mannerOf } from "../../recording/manner.ts";
import { isFall } from "../../recording/outcomes.ts";
import { t } from "../../words/index.ts";
import { tapped } from "./FencePanel.tsx";
import { attemptName } from "./names.ts";
import { wasMeant } from "./recorder.ts";
import type { OutingView } from "./useOuting.ts";

/** The last attempt once more, met and ridden as it was: one tap. A fall is never repeated so. */
export function Again({ view }: { view: OutingView }) {
  const last = view.attempts.at(-1)?.body;
  const fence = view.fences.find(({ record_id }) => record_id === last?.fence_id);
  if (!last || !fence || isFall(last.outcome)) return null;
  const again = (event: MouseEvent) => {
    if (!wasMeant("again", event)) return;
    const place = last.element ? placeAt(last.element, fence.record_id, fence.body, view.attempts, Date.now()) : { element: null, sequence_id: null };
    tapped(view, fence, last.outcome, place, mannerOf(last));
  };
  return <BigButton onClick={again}>{t("outing.again", { name: attemptName(last, fence.body) })}</BigButton>;
}
