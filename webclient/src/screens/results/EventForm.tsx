import { EVENT_STATUSES } from "../../entries/bodies.ts";
import { Choices } from "../../parts/Choices.tsx";
import { Stepper } from "../../parts/Stepper.tsx";
import { TextBox } from "../../parts/TextBox.tsx";
import { type Key, t } from "../../words/index.ts";
import { FallsChoice, HorseAndDay, LevelChoice, NoteBox, useDraftRulebook } from "./Common.tsx";
import { EVENT_NUMBERS, type EventDraft, type EventNumber, total } from "./drafts.ts";
import { orNull } from "./numbers.ts";
import type { ResultForm } from "./useResultForm.ts";

type Form = ResultForm<"event_result">;

const WORDS: Record<EventNumber, Key> = {
  dressage_penalties: "result.dressage",
  show_jumping_jump_penalties: "result.sj_jump",
  show_jumping_time_penalties: "result.sj_time",
  cross_country_jump_penalties: "result.xc_jump",
  cross_country_time_penalties: "result.xc_time",
  cross_country_seconds_over: "result.xc_seconds",
  place: "result.place",
  starters: "result.starters",
};
const PENALTIES: EventNumber[] = [
  "dressage_penalties", "show_jumping_jump_penalties", "show_jumping_time_penalties", "cross_country_jump_penalties", "cross_country_time_penalties",
];
const MORE: EventNumber[] = ["cross_country_seconds_over", "place", "starters"];

export function EventForm({ form }: { form: Form }) {
  const { draft, change, lacking } = form;
  const rulebook = useDraftRulebook(draft);
  return (
    <>
      <HorseAndDay draft={draft} change={change} lacking={lacking} />
      <TextBox
        label={t("result.event")} hint={t("result.event_hint")} value={draft.event} most={160} onInput={(event) => change({ event })}
        trouble={lacking.includes("event") ? t("result.need_event") : null}
      />
      <LevelChoice rulebook={rulebook} level_id={draft.level_id} onChoose={(rulebook_id, level_id) => change({ rulebook_id, level_id })} />
      {lacking.includes("level") && <p class="text-box__trouble" role="alert">{t("result.need_level")}</p>}
      <Choices
        label={t("result.status")} value={draft.status} onChoose={(status) => status && change({ status })}
        choices={EVENT_STATUSES.map((value) => ({ value, words: t(`event_status.${value}`) }))}
      />
      <div class="number-grid">{PENALTIES.map((name) => <NumberBox name={name} form={form} key={name} />)}</div>
      <TotalLive draft={draft} />
      <FallsChoice {...draft} onChoose={(falls) => change(falls)} />
      <details class="more">
        <summary>{t("result.more")}</summary>
        <div class="form">
          <div class="number-grid">{MORE.map((name) => <NumberBox name={name} form={form} key={name} />)}</div>
          <Stepper
            label={t("result.frangible")} value={draft.frangible_or_flag} step={1} from={0} least={0} most={5} show={String}
            onChange={(frangible_or_flag) => change({ frangible_or_flag })}
          />
          <Choices
            label={t("result.dangerous")} value={draft.dangerous_riding ? "yes" : "no"} onChoose={(chosen) => change({ dangerous_riding: chosen === "yes" })}
            choices={[{ value: "no", words: t("result.no") }, { value: "yes", words: t("result.yes") }]}
          />
        </div>
      </details>
      <NoteBox note={draft.note} onInput={(note) => change({ note })} />
    </>
  );
}

function NumberBox({ name, form: { draft, change, lacking } }: { name: EventNumber; form: Form }) {
  const { least, most } = EVENT_NUMBERS[name];
  return (
    <TextBox
      label={t(WORDS[name])} inputMode="decimal" value={draft.numbers[name]} most={8} onInput={(text) => change({ numbers: { ...draft.numbers, [name]: text } })}
      hint={name === "cross_country_seconds_over" ? t("result.xc_seconds_hint") : undefined}
      trouble={lacking.includes(name) ? t("result.bad_number", { least, most }) : null}
    />
  );
}

function TotalLive({ draft: { numbers } }: { draft: EventDraft }) {
  const sum = total(Object.fromEntries(PENALTIES.map((name) => [name, orNull(numbers[name], EVENT_NUMBERS[name])])));
  if (sum === null) return null;
  return <output class="live"><span class="live__big">{t(sum.whole ? "result.total" : "result.total_part", { total: sum.total })}</span></output>;
}
