import { TextBox } from "../../parts/TextBox.tsx";
import { type Dimension, DIMENSION_LIMITS_CM, STEP_FROM_CM } from "../../recording/dimensions.ts";
import { type Problem, type Typed, typed } from "../../recording/fenceForm.ts";
import { parseHeight, showHeight, units } from "../../units/index.ts";
import { t } from "../../words/index.ts";
import { StepLength } from "./StepLength.tsx";

interface Props {
  dimension: Dimension;
  value: Typed;
  problem: Problem | undefined;
  onChange: (value: Typed) => void;
}

/** One dimension: typed as people write it, or stepped with a glove on. */
export function LengthBox({ dimension, value, problem, onChange }: Props) {
  const label = t(`fence.dimension.${dimension}`);
  const limits = DIMENSION_LIMITS_CM[dimension];
  const stepped = (cm: number) => onChange({ text: showHeight(cm), value: cm, bad: false });
  return (
    <StepLength label={label} value_cm={value.value} limits_cm={limits} from_cm={STEP_FROM_CM[dimension]} onChange={stepped}>
      <TextBox
        label={label} value={value.text} onInput={(text) => onChange(typed(text, (each) => parseHeight(each)))} autoComplete="off"
        hint={reading(value)} trouble={problem && troubleWords(problem, limits)} enterKeyHint="done"
      />
    </StepLength>
  );
}

/** What was understood, where it is not what was typed; else how to write it. */
function reading({ text, value, bad }: Typed): string | undefined {
  if (bad) return undefined;
  if (value === null) return t(units.value === "metric" ? "fence.write_metric" : "fence.write_imperial");
  return showHeight(value) === text ? undefined : t("fence.read_as", { size: showHeight(value) });
}

function troubleWords(problem: Problem, [least, most]: readonly [number, number]): string {
  if (problem.code === "not_a_number") return t("fence.not_a_length");
  return t("fence.length_range", { least: showHeight(least), most: showHeight(most) });
}
