import { roundScore } from "../../pace/jumping.ts";
import { value as valueOf } from "../../pace/levels.ts";
import { Choices } from "../../parts/Choices.tsx";
import { Notice } from "../../parts/Notice.tsx";
import { Stepper } from "../../parts/Stepper.tsx";
import { TextBox } from "../../parts/TextBox.tsx";
import { showHeight } from "../../units/index.ts";
import { t } from "../../words/index.ts";
import { FallsChoice, HorseAndDay, JudgedChoice, LevelChoice, levelOf, NoteBox, useDraftRulebook } from "./Common.tsx";
import { counted, type RoundDraft, TIME_PENALTIES } from "./drafts.ts";
import { JumpByJump } from "./JumpByJump.tsx";
import type { ResultForm } from "./useResultForm.ts";

type Form = ResultForm<"jumping_round">;

const HEIGHT_FROM_CM = 90;
const HEIGHT_STEP_CM = 5;
const EFFORTS_FROM = 10;

export function RoundForm({ form: { draft, change, lacking } }: { form: Form }) {
  const rulebook = useDraftRulebook(draft);
  const level = levelOf(rulebook, draft.level_id);
  // a level sets the height where the person has not; it is not kept, for a round is a height, not a level
  const chooseLevel = (rulebook_id: string | null, level_id: string | null): void => {
    const height = valueOf(levelOf(rulebook, level_id), "show_jumping", "height_cm");
    change({ rulebook_id, level_id, height_cm: height ?? draft.height_cm });
  };
  return (
    <>
      <HorseAndDay draft={draft} change={change} lacking={lacking} />
      <LevelChoice optional rulebook={rulebook} level_id={draft.level_id} onChoose={chooseLevel} />
      <Stepper
        label={t("result.height")} value={draft.height_cm} step={HEIGHT_STEP_CM} from={HEIGHT_FROM_CM} least={20} most={200} show={showHeight}
        onChange={(height_cm) => change({ height_cm })}
      />
      {lacking.includes("height") && <p class="text-box__trouble" role="alert">{t("result.need_height")}</p>}
      <Choices
        label={t("result.by")} value={draft.by} onChoose={(by) => by && change({ by })}
        choices={[{ value: "counts", words: t("result.by_counts") }, { value: "jumps", words: t("result.by_jumps") }]}
      />
      {draft.by === "counts" ? <Counts draft={draft} change={change} /> : <JumpByJump jumps={draft.jumps} onChange={(jumps) => change({ jumps })} />}
      {lacking.includes("efforts") && <p class="text-box__trouble" role="alert">{t("result.need_efforts")}</p>}
      <RoundLive draft={counted(draft)} level={level} />
      {draft.by === "counts" && <FallsChoice {...draft} onChoose={(falls) => change(falls)} />}
      {draft.by === "jumps" && (counted(draft).rider_fall || counted(draft).horse_fall) && <Notice tone="stop"><p>{t("result.after_fall")}</p></Notice>}
      <Choices
        label={t("result.completed")} value={draft.completed ? "yes" : "no"} onChoose={(chosen) => change({ completed: chosen === "yes" })}
        choices={[{ value: "yes", words: t("result.yes") }, { value: "no", words: t("result.no") }]}
      />
      <TextBox
        label={t("result.time_penalties")} inputMode="decimal" value={draft.time_penalties} most={8} onInput={(time_penalties) => change({ time_penalties })}
        trouble={lacking.includes("time_penalties") ? t("result.bad_number", { ...TIME_PENALTIES, whole: "" }) : null}
      />
      <JudgedChoice judged={draft.judged} onChoose={(judged) => change({ judged })} />
      <NoteBox note={draft.note} onInput={(note) => change({ note })} />
    </>
  );
}

function Counts({ draft, change }: Pick<Form, "draft" | "change">) {
  const count = { step: 1, show: String } as const;
  return (
    <>
      <Stepper {...count} label={t("result.efforts")} value={draft.efforts} from={EFFORTS_FROM} least={1} most={40} onChange={(efforts) => change({ efforts })} />
      <Stepper {...count} label={t("result.knockdowns")} value={draft.knockdowns} from={0} least={0} most={40} onChange={(knockdowns) => change({ knockdowns })} />
      <Stepper {...count} label={t("result.refusals")} value={draft.refusals} from={0} least={0} most={10} onChange={(refusals) => change({ refusals })} />
      <Stepper {...count} label={t("result.combinations")} value={draft.combinations} from={1} least={0} most={10} onChange={(combinations) => change({ combinations })} />
    </>
  );
}

function RoundLive({ draft, level }: { draft: RoundDraft; level: Parameters<typeof roundScore>[1] }) {
  const score = roundScore(draft, level);
  if (score.is === "eliminated") return <p class="live__big">{t("result.eliminated")}</p>;
  if (score.is === "unstated") return <p class="quiet">{t(level === null ? "result.choose_level" : "result.faults_unstated")}</p>;
  return <output class="live"><span class="live__big">{score.penalties === 0 ? t("result.clear_round") : t("result.faults_live", { penalties: score.penalties })}</span></output>;
}
