import { useState } from "preact/hooks";

import { ASKS } from "../../entries/bodies.ts";
import { Button } from "../../parts/BigButton.tsx";
import { ManyChoices } from "../../parts/Choices.tsx";
import { type Dimension, DIMENSIONS, firstDimensions } from "../../recording/dimensions.ts";
import { type PartForm, type Problem, withAsk, withDimension, withProfile } from "../../recording/fenceForm.ts";
import { t } from "../../words/index.ts";
import { LengthBox } from "./LengthBox.tsx";
import { ProfileChoice } from "./ProfileChoice.tsx";

interface Props<F extends PartForm> {
  part: F;
  /** Where this part's problems lie: "" for the fence, "elements.0." for an element. */
  path: string;
  problems: readonly Problem[];
  onChange: (part: F) => void;
}

/** Profile, asks and dimensions: the same for a fence and for each element of a combination. */
export function PartFields<F extends PartForm>({ part, path, problems, onChange }: Props<F>) {
  const missing = problems.some((problem) => problem.path === `${path}profile`);
  return (
    <>
      <ProfileChoice label={t("fence.profile")} value={part.profile} onChoose={(profile) => onChange(withProfile(part, profile))} />
      {missing && <p class="text-box__trouble">{t("fence.profile_missing")}</p>}
      {part.profile && <Asks part={part} onChange={onChange} />}
      {part.profile && <Dimensions part={part} path={path} problems={problems} onChange={onChange} />}
    </>
  );
}

function Asks<F extends PartForm>({ part, onChange }: Pick<Props<F>, "part" | "onChange">) {
  const choices = ASKS.filter((ask) => ask !== "combination").map((value) => ({ value, words: t(`ask.${value}`) }));
  const changed = (values: string[]) => {
    const ask = choices.find(({ value }) => values.includes(value) !== part.asks.includes(value));
    if (ask) onChange(withAsk(part, ask.value));
  };
  return <ManyChoices<string> label={t("fence.asks")} choices={choices} values={part.asks} onChange={changed} />;
}

function Dimensions<F extends PartForm>({ part, path, problems, onChange }: Props<F>) {
  const [all, setAll] = useState(false);
  const shown = DIMENSIONS.filter((name) => all || isSensible(part, name));
  return (
    <div class="dimensions">
      {shown.map((name) => (
        <LengthBox
          dimension={name} value={part.dimensions[name]} problem={problems.find((problem) => problem.path === path + name)}
          onChange={(value) => onChange(withDimension(part, name, value))} key={name}
        />
      ))}
      {!all && <p><Button onClick={() => setAll(true)}>{t("fence.more_dimensions")}</Button></p>}
    </div>
  );
}

function isSensible(part: PartForm, name: Dimension): boolean {
  return firstDimensions(part.profile!).includes(name) || part.dimensions[name].text !== "";
}
