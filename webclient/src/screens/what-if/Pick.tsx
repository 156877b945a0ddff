import { t } from "../../words/index.ts";

interface Props {
  label: string;
  value: string;
  onPick: (value: string) => void;
  /** Value and words of each choice. */
  choices: readonly (readonly [string, string])[];
  /** The words while none is picked. */
  none?: string;
}

/** One of a list too long for chips, or nothing. */
export function Pick({ label, value, onPick, choices, none = t("whatif.nothing") }: Props) {
  return (
    <label class="text-box">
      <span class="text-box__label">{label}</span>
      <select value={value} onChange={(event) => onPick(event.currentTarget.value)}>
        <option value="">{none}</option>
        {choices.map(([each, words]) => <option value={each} key={each}>{words}</option>)}
      </select>
    </label>
  );
}
