import { useState } from "preact/hooks";

import type { Jump } from "../../entries/bodies.ts";
import { BigButton, Button } from "../../parts/BigButton.tsx";
import { t } from "../../words/index.ts";
import { countsOf, JUMP_OUTCOMES, nextFence, nextLabel, nextPart } from "./jumps.ts";

/** One tap a fence: its number moves on by itself, and waits at a fence after a stop. */
export function JumpByJump({ jumps, onChange }: { jumps: Jump[]; onChange: (jumps: Jump[]) => void }) {
  const [moved, move] = useState<string | null>(null);
  const label = moved ?? nextLabel(jumps);
  const keep = (next: Jump[]) => {
    move(null);
    onChange(next);
  };
  const { efforts, knockdowns, refusals } = countsOf(jumps);
  return (
    <>
      <p class="live__big" role="status">{t("result.at_fence", { label })}</p>
      <div class="controls">
        {JUMP_OUTCOMES.map((outcome) => (
          <BigButton key={outcome} tone={outcome === "clear" ? "main" : "plain"} onClick={() => keep([...jumps, { label, outcome }])}>{t(`outcome.${outcome}`)}</BigButton>
        ))}
      </div>
      <div class="buttons">
        <Button onClick={() => move(nextPart(label))}>{t("result.part", { label: nextPart(label) })}</Button>
        <Button onClick={() => move(nextFence(label))}>{t("result.to_fence", { label: nextFence(label) })}</Button>
        {jumps.length > 0 && <Button onClick={() => keep(jumps.slice(0, -1))}>{t("frame.undo")}</Button>}
      </div>
      {jumps.length > 0 && <p>{jumps.map(({ label: at, outcome }) => `${at} ${t(`outcome.${outcome}`).toLowerCase()}`).join(", ")}</p>}
      {jumps.length > 0 && <p><strong>{t("result.jumped", { n: efforts, knockdowns, refusals })}</strong></p>}
    </>
  );
}
