import { Button } from "../../parts/BigButton.tsx";
import { TextBox } from "../../parts/TextBox.tsx";
import { addElement, type FenceForm, LETTERS, type Problem, removeElement, withAsk, withElement } from "../../recording/fenceForm.ts";
import { ManyChoices } from "../../parts/Choices.tsx";
import { t } from "../../words/index.ts";
import { ElementFields } from "./ElementFields.tsx";
import { FormFit } from "./FitLine.tsx";
import { PartFields } from "./PartFields.tsx";

interface Props {
  form: FenceForm;
  problems: readonly Problem[];
  onChange: (form: FenceForm) => void;
}

/** Everything that can be said of a fence. */
export function FenceFields({ form, problems, onChange }: Props) {
  const nameless = problems.some((problem) => problem.path === "label");
  return (
    <>
      <TextBox label={t("fence.label")} hint={t("fence.label_hint")} value={form.label} most={60} autoComplete="off" trouble={nameless ? t("fence.label_missing") : null} onInput={(label) => onChange({ ...form, label })} />
      {form.elements.length ? <Elements form={form} problems={problems} onChange={onChange} /> : <PartFields part={form} path="" problems={problems} onChange={onChange} />}
      <FormFit form={form} />
      {form.elements.length < LETTERS.length && <p><Button onClick={() => onChange(addElement(form))}>{form.elements.length ? t("fence.add_element", { letter: LETTERS[form.elements.length]! }) : t("fence.make_combination")}</Button></p>}
      <label class="tick">
        <input type="checkbox" checked={form.favourite} onChange={() => onChange({ ...form, favourite: !form.favourite })} />
        <span>{t("fence.favourite")}</span>
      </label>
      <TextBox label={t("fence.notes")} lines={3} most={4000} value={form.notes} onInput={(notes) => onChange({ ...form, notes })} />
    </>
  );
}

function Elements({ form, problems, onChange }: Props) {
  return (
    <>
      <p class="quiet">{t("fence.elements_hint")}</p>
      {form.elements.map((element, at) => (
        <ElementFields
          element={element} at={at} last={at === form.elements.length - 1} problems={problems} key={at}
          onChange={(changed) => onChange(withElement(form, at, changed))} onRemove={() => onChange(removeElement(form, at))}
        />
      ))}
      <WholeAsks form={form} problems={problems} onChange={onChange} />
    </>
  );
}

const WAYS = ["bounce", "bending_line", "angled_line"] as const;

/** What only the combination as a whole can ask. */
function WholeAsks({ form, onChange }: Props) {
  const choices = WAYS.map((value) => ({ value, words: t(`ask.${value}`) }));
  const changed = (values: (typeof WAYS)[number][]) => {
    const ask = WAYS.find((each) => values.includes(each) !== form.asks.includes(each));
    if (ask) onChange(withAsk(form, ask));
  };
  return <ManyChoices label={t("fence.whole_asks")} choices={choices} values={WAYS.filter((way) => form.asks.includes(way))} onChange={changed} />;
}
