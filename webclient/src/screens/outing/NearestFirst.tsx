import { signal } from "@preact/signals";
import { useState } from "preact/hooks";

import { type Fix, NoFix, whereAmI } from "../../location/fixes.ts";
import { showRough } from "../../units/index.ts";
import { t } from "../../words/index.ts";

/** Where the person last said she was; the list goes by it until she turns it off. */
export const standsAt = signal<Fix | null>(null);

/** Riding order, or nearest first: one fix when it is switched on, and another each time it is asked for again. */
export function NearestFirst() {
  const [looking, setLooking] = useState(false);
  const [trouble, setTrouble] = useState<string | null>(null);
  const fix = standsAt.value;
  const look = async () => {
    setLooking(true);
    setTrouble(null);
    standsAt.value = await whereAmI().catch((none: unknown) => {
      setTrouble(t((none instanceof NoFix ? none.phrase.key : "location.not_found") as "location.refused"));
      return null;
    });
    setLooking(false);
  };
  return (
    <div class="nearest">
      <div class="buttons">
        <button type="button" class="button" disabled={looking} onClick={() => void look()}>{looking ? t("outing.looking") : t(fix ? "outing.nearest_again" : "outing.nearest")}</button>
        {fix && <button type="button" class="button" onClick={() => (standsAt.value = null)}>{t("outing.in_order")}</button>}
      </div>
      <p class="quiet" role="status">{trouble ?? (fix && t("outing.nearest_is", { accuracy: showRough(fix.accuracy_m) }))}</p>
    </div>
  );
}
