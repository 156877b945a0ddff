import { useState } from "preact/hooks";

import type { Numbers } from "../../conditioning/remembered.ts";
import { speedPhrase, stepPhrase } from "../../conditioning/phrases.ts";
import { courseMinutes, STEP_SOURCES } from "../../conditioning/steps.ts";
import { tenths } from "../../pace/phrases.ts";
import { Choices } from "../../parts/Choices.tsx";
import { Stepper } from "../../parts/Stepper.tsx";
import { recall, remember } from "../../store/little.ts";
import { say, t } from "../../words/index.ts";
import { QUIET } from "../watch/device.ts";
import type { SetUp } from "./useSetUp.ts";

const NEW = "new";

/** Everything that can be chosen before a set: for whom, towards what, how long. */
export function PlanForm({ setUp }: { setUp: SetUp }) {
  return (
    <div class="form">
      <PairChoice setUp={setUp} />
      <LevelChoice setUp={setUp} />
      <StepChoice setUp={setUp} />
      <NumberSteppers setUp={setUp} />
      <SoundChoice />
      <Sources />
    </div>
  );
}

function PairChoice({ setUp: { outings, horses, outing, horse, choose } }: { setUp: SetUp }) {
  const name = (id: string): string => horses.find((one) => one.record_id === id)?.body.name ?? "…";
  const chips = outings.map((one) => ({ value: one.record_id, words: t("conditioning.outing_today", { horse: name(one.body.horse_id), activity: t(`activity.${one.body.activity}`) }) }));
  return (
    <>
      {chips.length > 0 && (
        <Choices
          label={t("conditioning.outing")} value={outing?.record_id ?? NEW} choices={[...chips, { value: NEW, words: t("conditioning.outing_new") }]}
          onChoose={(id) => (id === NEW ? choose(null, horse?.record_id ?? "") : choose(id, null))}
        />
      )}
      {!outing && (
        <Choices
          label={t("conditioning.horse")} value={horse?.record_id ?? null} choices={horses.map((one) => ({ value: one.record_id, words: one.body.name }))}
          onChoose={(id) => choose(null, id)}
        />
      )}
    </>
  );
}

function LevelChoice({ setUp: { rulebook, level, steps, chooseLevel } }: { setUp: SetUp }) {
  if (!rulebook || !level) return <p class="quiet">{t("conditioning.no_rulebook")}</p>;
  const minutes = courseMinutes(level);
  return (
    <div class="set-part">
      <Choices
        label={t("conditioning.level")} value={level.id} choices={rulebook.levels.map((one) => ({ value: one.id, words: one.name }))}
        onChoose={(id) => id && chooseLevel(id)}
      />
      <p class="quiet">
        {steps.length === 0 || minutes === null ? t("conditioning.level_no_steps", { level: level.name }) : t("conditioning.course", { level: level.name, minutes: tenths(minutes) })}
      </p>
    </div>
  );
}

function StepChoice({ setUp: { steps, step, numbers, chooseStep } }: { setUp: SetUp }) {
  if (steps.length === 0) return null;
  const chips = steps.map((each, n) => ({ value: String(n), words: say(stepPhrase(each)) }));
  return (
    <div class="set-part">
      <Choices
        label={t("conditioning.which_step")} value={step === null ? "own" : String(step)}
        choices={step === null ? [...chips, { value: "own", words: `${t("conditioning.step_own")}: ${say(stepPhrase(numbers))}` }] : chips}
        onChoose={(value) => value !== null && value !== "own" && chooseStep(Number(value))}
      />
      <p class="quiet">{t("conditioning.at_speed", { speed: say(speedPhrase(steps[0]!.speed_mpm)) })}</p>
    </div>
  );
}

const minutes = (n: number): string => t("conditioning.minutes", { n });

/** How many canters, how long, how fast, and the walk between. */
export function SetSteppers({ numbers, change }: { numbers: Numbers; change: (part: Partial<Numbers>) => void }) {
  return (
    <div class="set-numbers">
      <Stepper label={t("conditioning.canters")} value={numbers.canters} step={1} least={1} most={10} from={3} show={String} onChange={(canters) => change({ canters })} />
      <Stepper label={t("conditioning.work")} value={numbers.work_min} step={0.5} least={0.5} most={20} from={3} show={minutes} onChange={(work_min) => change({ work_min })} />
      <Stepper label={t("conditioning.walk")} value={numbers.walk_min} step={0.5} least={0.5} most={20} from={3} show={minutes} onChange={(walk_min) => change({ walk_min })} />
      <Stepper
        label={t("conditioning.speed")} value={numbers.speed_mpm} step={10} least={150} most={750} from={350} show={(low) => t("conditioning.speed_one", { low })}
        onChange={(speed_mpm) => change({ speed_mpm })}
      />
    </div>
  );
}

function NumberSteppers({ setUp: { numbers, change, walk_first_min, chooseWalkFirst } }: { setUp: SetUp }) {
  return (
    <>
      <SetSteppers numbers={numbers} change={change} />
      <Stepper
        label={t("conditioning.walk_first")} value={walk_first_min} step={5} least={0} most={60} from={15}
        show={(n) => (n === 0 ? t("conditioning.walk_first_none") : minutes(n))} onChange={chooseWalkFirst}
      />
    </>
  );
}

function SoundChoice() {
  const [quiet, setQuiet] = useState(recall<boolean>(QUIET) === true);
  const choose = (value: "on" | "off" | null): void => {
    setQuiet(value === "off");
    remember(QUIET, value === "off");
  };
  return (
    <div class="set-part">
      <Choices
        label={t("conditioning.sound")} value={quiet ? "off" : "on"} onChoose={choose}
        choices={[{ value: "on", words: t("conditioning.sound_on") }, { value: "off", words: t("conditioning.sound_off") }]}
      />
      <p class="quiet">{t("conditioning.sound_hint")}</p>
    </div>
  );
}

function Sources() {
  return (
    <details class="more">
      <summary class="more__summary">{t("conditioning.sources")}</summary>
      <ul class="bullets">
        {STEP_SOURCES.map(({ what, grade }) => <li key={what}>{t(`conditioning.source_${what}`)} <span class="quiet">({t(`conditioning.grade_${grade}`)})</span></li>)}
      </ul>
    </details>
  );
}
