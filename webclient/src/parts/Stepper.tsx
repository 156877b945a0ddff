import { t } from "../words/index.ts";
import { Icon } from "./Icon.tsx";

interface Props {
  label: string;
  value: number | null;
  onChange: (value: number) => void;
  step: number;
  least: number;
  most: number;
  /** Where the first tap starts from when nothing was said. */
  from: number;
  /** How the number reads, such as `90 cm`. */
  show: (value: number) => string;
}

/** A number by buttons: gloves cannot type. */
export function Stepper({ label, value, onChange, step, least, most, from, show }: Props) {
  const move = (by: number) => onChange(value === null ? from : within(value + by, least, most));
  return (
    <div class="stepper" role="group" aria-label={label}>
      <span class="stepper__label">{label}</span>
      <button type="button" class="stepper__button" aria-label={t("frame.less", { of: label })} disabled={value !== null && value <= least} onClick={() => move(-step)}>
        <Icon name="minus" />
      </button>
      <output class="stepper__value" aria-live="polite">{value === null ? t("frame.not_said") : show(value)}</output>
      <button type="button" class="stepper__button" aria-label={t("frame.more", { of: label })} disabled={value !== null && value >= most} onClick={() => move(step)}>
        <Icon name="plus" />
      </button>
    </div>
  );
}

function within(value: number, least: number, most: number): number {
  return Math.min(most, Math.max(least, Math.round(value * 1000) / 1000));
}
