import { CHECK_MINUTES, minuteOf } from "../../conditioning/cues.ts";
import { type SetRun, totalMs } from "../../conditioning/set.ts";
import { BigButton } from "../../parts/BigButton.tsx";
import { Choices } from "../../parts/Choices.tsx";
import { Stepper } from "../../parts/Stepper.tsx";
import { toast } from "../../parts/toast.ts";
import { edit, type SavedRecord, useDraft } from "../../store/book.ts";
import { useBusy } from "../../update/busy.ts";
import { t } from "../../words/index.ts";
import { RatePair } from "./RateStepper.tsx";
import { setRunner } from "./thisSet.ts";

/** Half-entered rates, kept as a draft: a killed page finds them again. `minute` null: by the clock. */
interface Draft {
  minute: number | null;
  heart: number | null;
  breath: number | null;
}

const NOTHING: Draft = { minute: null, heart: null, breath: null };
const OTHER = "other";

function read(text: string): Draft {
  try {
    return { ...NOTHING, ...(JSON.parse(text) as Draft) };
  } catch {
    return NOTHING;
  }
}

/** Rates to add: at which minute, heart, breathing. The minute follows the clock until one is chosen. */
export function RateForm({ set, run }: { set: SavedRecord<"interval_set">; run: SetRun | null }) {
  const [text, setText, clear] = useDraft(`rates ${set.record_id}`);
  const draft = read(text);
  const change = (part: Partial<Draft>): void => setText(JSON.stringify({ ...draft, ...part }));
  const nothing = draft.heart === null && draft.breath === null;
  useBusy(!nothing);
  const minute = draft.minute ?? (run ? minuteNow(run) : firstUntaken(set));
  const keep = async (): Promise<void> => {
    const check = { minute, heart_rate_bpm: draft.heart, respiration_bpm: draft.breath };
    const others = set.body.recoveries.filter((each) => each.minute !== minute);
    const done = await edit(set, { recoveries: [...others, check] }).catch(() => null);
    if (!done) return toast(t("conditioning.not_kept"));
    clear();
    toast(t("conditioning.kept"), () => void edit(done, { recoveries: set.body.recoveries }).catch(() => undefined));
  };
  return (
    <div class="form rate-form">
      <h3>{t("conditioning.add_rates")}</h3>
      <MinuteChoice minute={minute} onChoose={(chosen) => change({ minute: chosen })} />
      <RatePair heart={draft.heart} breath={draft.breath} onHeart={(heart) => change({ heart })} onBreath={(breath) => change({ breath })} />
      <BigButton tone="main" disabled={nothing} onClick={() => void keep()}>{t("conditioning.keep")}</BigButton>
    </div>
  );
}

function minuteNow(run: SetRun): number {
  return minuteOf((setRunner.elapsed()?.elapsed_ms ?? 0) - totalMs(run.segments));
}

function firstUntaken({ body }: SavedRecord<"interval_set">): number {
  return CHECK_MINUTES.find((minute) => !body.recoveries.some((check) => check.minute === minute)) ?? 0;
}

function MinuteChoice({ minute, onChoose }: { minute: number; onChoose: (minute: number) => void }) {
  const set = CHECK_MINUTES.some((each) => each === minute);
  const chips = CHECK_MINUTES.map((each) => ({ value: String(each), words: t("conditioning.minutes", { n: each }) }));
  return (
    <>
      <Choices
        label={t("conditioning.minute")} big value={set ? String(minute) : OTHER} choices={[...chips, { value: OTHER, words: t("conditioning.minute_other") }]}
        onChoose={(value) => onChoose(value === OTHER ? 5 : Number(value))}
      />
      {!set && <Stepper label={t("conditioning.minute_other")} value={minute} step={1} least={0} most={240} from={5} show={(n) => t("conditioning.minutes", { n })} onChange={onChoose} />}
    </>
  );
}
