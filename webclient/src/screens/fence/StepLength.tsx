import type { ComponentChildren } from "preact";

import { STEPS, step } from "../../recording/steps.ts";
import { showHeight, units } from "../../units/index.ts";
import { t } from "../../words/index.ts";

interface Props {
  label: string;
  value_cm: number | null;
  limits_cm: readonly [number, number];
  /** Where the first tap lands when nothing is measured. */
  from_cm: number;
  onChange: (value_cm: number) => void;
  /** Stands in place of the plain number: a box to type in. */
  children?: ComponentChildren;
}

/** A length by stepping buttons, in whole centimetres or whole inches. */
export function StepLength({ label, value_cm, limits_cm, from_cm, onChange, children }: Props) {
  const [far, near] = STEPS[units.value];
  const move = (by: number) => onChange(step(value_cm, by, units.value, from_cm, limits_cm));
  return (
    <div class="step-length" role="group" aria-label={label}>
      {children ?? <p class="step-length__line"><span class="step-length__label">{label}</span> <output class="step-length__value">{value_cm === null ? t("frame.not_said") : showHeight(value_cm)}</output></p>}
      <div class="step-length__buttons">
        {[-far, -near, near, far].map((by) => (
          <button type="button" class="big-button" key={by} aria-label={t(by < 0 ? "fence.step_down" : "fence.step_up", { label, by: stepName(by) })} onClick={() => move(by)}>
            {by < 0 ? "−" : "+"}{Math.abs(by)}
          </button>
        ))}
      </div>
    </div>
  );
}

const stepName = (by: number): string => t(units.value === "metric" ? "fence.step_cm" : "fence.step_in", { n: Math.abs(by) });
