import { useState } from "preact/hooks";

import { nextSet } from "../../conditioning/recovery.ts";
import { Notice } from "../../parts/Notice.tsx";
import { t } from "../../words/index.ts";
import { RatePair } from "./RateStepper.tsx";

/** Between two canters: whether the rates allow the next one by the published gate. Only shown, never kept. */
export function BeforeNext() {
  const [heart, setHeart] = useState<number | null>(null);
  const [breath, setBreath] = useState<number | null>(null);
  return (
    <details class="more before-next">
      <summary class="more__summary">{t("conditioning.before_next")}</summary>
      <p class="quiet">{t("conditioning.before_next_hint")}</p>
      <RatePair heart={heart} breath={breath} onHeart={setHeart} onBreath={setBreath} />
      {(heart !== null || breath !== null) && <Answer heart={heart} breath={breath} />}
    </details>
  );
}

function Answer({ heart, breath }: { heart: number | null; breath: number | null }) {
  const { state } = nextSet(heart, breath);
  const tone = state === "call_vet" ? "stop" : state === "slow" ? "attention" : "plain";
  return <Notice tone={tone} urgent={state === "call_vet"}><p>{t(`conditioning.next_${state}`)}</p></Notice>;
}
