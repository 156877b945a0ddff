import type { Outcome } from "../../entries/bodies.ts";
import { BigButton } from "../../parts/BigButton.tsx";
import type { Letter } from "../../recording/combination.ts";
import { isFall, outcomesBesideClear } from "../../recording/outcomes.ts";
import { t } from "../../words/index.ts";

interface Props {
  showJump: boolean;
  element: Letter | null;
  onOutcome: (outcome: Outcome, event: MouseEvent) => void;
  onCancel: (event: MouseEvent) => void;
}

/** Everything that is not clear, one tap each. */
export function OutcomeGrid({ showJump, element, onOutcome, onCancel }: Props) {
  return (
    <div class="outcome-grid" role="group" aria-label={element ? t("outing.what_happened_at", { element }) : t("outing.what_happened")}>
      {outcomesBesideClear(showJump).map((outcome) => (
        <BigButton tone={isFall(outcome) ? "stop" : "plain"} onClick={(event) => onOutcome(outcome, event)} key={outcome}>
          {t(`outcome.${outcome}`)}
        </BigButton>
      ))}
      <div class="outcome-grid__cancel"><BigButton onClick={onCancel}>{t("frame.cancel")}</BigButton></div>
    </div>
  );
}
