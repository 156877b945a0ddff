import type { RecoveryCheck } from "../../entries/bodies.ts";
import { Icon } from "../../parts/Icon.tsx";
import { toast } from "../../parts/toast.ts";
import { edit, type SavedRecord } from "../../store/book.ts";
import { t } from "../../words/index.ts";

export function ratesWords({ heart_rate_bpm, respiration_bpm }: RecoveryCheck): string {
  const heart = heart_rate_bpm === null ? [] : [t("conditioning.heart_short", { rate: heart_rate_bpm })];
  const breath = respiration_bpm === null ? [] : [t("conditioning.breath_short", { rate: respiration_bpm })];
  return [...heart, ...breath].join(", ");
}

/** The rates taken so far, by the minute, each with its bin. */
export function RateList({ set, writes }: { set: SavedRecord<"interval_set">; writes: boolean }) {
  const { recoveries } = set.body;
  if (recoveries.length === 0) return <p class="empty">{t("conditioning.no_rates")}</p>;
  const write = (checks: RecoveryCheck[]) => edit(set, { recoveries: checks });
  const remove = async (gone: RecoveryCheck): Promise<void> => {
    const done = await write(recoveries.filter((check) => check !== gone)).catch(() => null);
    if (done) toast(t("conditioning.removed"), () => void write(recoveries).catch(() => undefined));
  };
  return (
    <ul class="rates">
      {[...recoveries].sort((one, other) => one.minute - other.minute).map((check, n) => (
        <li class="rates__line" key={n}>
          <span>{t("conditioning.check", { minute: check.minute, rates: ratesWords(check) })}</span>
          {writes && <button type="button" class="icon-button" aria-label={t("conditioning.remove", { minute: check.minute })} onClick={() => void remove(check)}><Icon name="cross" /></button>}
        </li>
      ))}
    </ul>
  );
}
