import { t } from "../../words/index.ts";
import { type PadKey, press } from "./markSheet.ts";

const WHOLE = [0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10];

/** Twenty marks in twenty taps: a whole mark starts the next movement, ½ and ×2 change the last one. */
export function MarkPad({ line, onChange }: { line: string; onChange: (line: string) => void }) {
  const tap = (key: PadKey) => () => onChange(press(line, key));
  return (
    <div class="pad" role="group" aria-label={t("result.pad")}>
      {WHOLE.map((whole) => <button type="button" class="pad__key" key={whole} onClick={tap({ whole })}>{whole}</button>)}
      <button type="button" class="pad__key" aria-label={t("result.pad_half_label")} onClick={tap("half")}>{t("result.pad_half")}</button>
      <button type="button" class="pad__key" aria-label={t("result.pad_double_label")} onClick={tap("double")}>{t("result.pad_double")}</button>
      <button type="button" class="pad__key pad__key--wide" aria-label={t("result.pad_back_label")} onClick={tap("back")}>{t("result.pad_back")}</button>
    </div>
  );
}
