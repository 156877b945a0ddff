import { useId } from "preact/hooks";

interface Choice<W extends string> {
  value: W;
  words: string;
}

interface Props<W extends string> {
  /** What is being chosen, as the group's label. */
  label: string;
  choices: readonly Choice<W>[];
  value: W | null;
  /** `null` when the chosen one is tapped again and nothing needs to be said. */
  onChoose: (value: W | null) => void;
  /** Tapping the chosen one takes it back. */
  optional?: boolean;
  big?: boolean;
  hideLabel?: boolean;
}

/** A row of chips of which one is chosen; a group of radio buttons for keyboards and screen readers. */
export function Choices<W extends string>({ label, choices, value, onChoose, optional, big, hideLabel }: Props<W>) {
  const name = useId();
  const tapped = (chosen: W) => optional && chosen === value && onChoose(null);
  return (
    <fieldset class={big ? "choices choices--big" : "choices"}>
      <legend class={hideLabel ? "unseen" : "choices__label"}>{label}</legend>
      <div class="choices__row">
        {choices.map((choice) => (
          <label class="chip" key={choice.value}>
            <input
              class="chip__input" type="radio" name={name} value={choice.value} checked={choice.value === value}
              onChange={() => onChoose(choice.value)} onClick={() => tapped(choice.value)}
            />
            <span class="chip__words">{choice.words}</span>
          </label>
        ))}
      </div>
    </fieldset>
  );
}

interface ManyProps<W extends string> {
  label: string;
  choices: readonly Choice<W>[];
  values: readonly W[];
  onChange: (values: W[]) => void;
}

/** A row of chips of which any number is chosen. */
export function ManyChoices<W extends string>({ label, choices, values, onChange }: ManyProps<W>) {
  const toggled = (word: W) => (values.includes(word) ? values.filter((each) => each !== word) : [...values, word]);
  return (
    <fieldset class="choices">
      <legend class="choices__label">{label}</legend>
      <div class="choices__row">
        {choices.map(({ value, words }) => (
          <label class="chip" key={value}>
            <input class="chip__input" type="checkbox" checked={values.includes(value)} onChange={() => onChange(toggled(value))} />
            <span class="chip__words">{words}</span>
          </label>
        ))}
      </div>
    </fieldset>
  );
}
