import { t } from "../../words/index.ts";
import { Button } from "../../parts/BigButton.tsx";

interface Props {
  label: string;
  value: number | null;
  /** Where the first tap starts from when nothing was taken. */
  from: number;
  least: number;
  most: number;
  onChange: (value: number | null) => void;
}

const STEPS = [-10, -1, 1, 10] as const;

/** A rate by big buttons, in ones and tens: gloves cannot type, and a pulse is no round number. */
export function RateStepper({ label, value, from, least, most, onChange }: Props) {
  const move = (by: number): void => onChange(value === null ? from : Math.min(most, Math.max(least, value + by)));
  return (
    <div class="rate" role="group" aria-label={label}>
      <span class="rate__label">{label}</span>
      <output class="rate__value" aria-live="polite">{value ?? <span class="rate__none">{t("conditioning.not_taken")}</span>}</output>
      {STEPS.map((by) => (
        <button type="button" class="rate__button" key={by} aria-label={t(by < 0 ? "conditioning.less_by" : "conditioning.more_by", { by: Math.abs(by), of: label })} onClick={() => move(by)}>
          {by < 0 ? `−${-by}` : `+${by}`}
        </button>
      ))}
      {value !== null && <span class="rate__clear"><Button tone="quiet" onClick={() => onChange(null)} label={`${t("conditioning.clear_rate")}: ${label}`}>{t("conditioning.clear_rate")}</Button></span>}
    </div>
  );
}

/** Heart and breathing together, within what the logbook holds. */
export function RatePair({ heart, breath, onHeart, onBreath }: { heart: number | null; breath: number | null; onHeart: (rate: number | null) => void; onBreath: (rate: number | null) => void }) {
  return (
    <>
      <RateStepper label={t("conditioning.heart")} value={heart} from={80} least={15} most={260} onChange={onHeart} />
      <RateStepper label={t("conditioning.breath")} value={breath} from={40} least={4} most={200} onChange={onBreath} />
      <p class="quiet">{t("conditioning.how_to")}</p>
    </>
  );
}
