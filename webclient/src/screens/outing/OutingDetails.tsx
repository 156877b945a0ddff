import { Link, useLocation } from "wouter-preact";

import { ACTIVITIES, GOING, type Outing } from "../../entries/bodies.ts";
import { BigButton, Button } from "../../parts/BigButton.tsx";
import { Choices } from "../../parts/Choices.tsx";
import { NotHere } from "../../parts/NotHere.tsx";
import { Screen } from "../../parts/Screen.tsx";
import { Stepper } from "../../parts/Stepper.tsx";
import { TextBox } from "../../parts/TextBox.tsx";
import { toast } from "../../parts/toast.ts";
import { edit, putBack, type SavedRecord, takeBack, useRecord, useRecords, useRole, useWhetherHere } from "../../store/book.ts";
import { t } from "../../words/index.ts";
import "../../style/recording.css";
import { ForkNotice } from "../attempt/ForkNotice.tsx";
import { About } from "../media/About.tsx";
import { KeptText } from "../note/KeptText.tsx";

/** What is said of the outing as a whole. Every change is kept at once: there is nothing to submit. */
export function OutingDetails({ params }: { params: { id: string } }) {
  const whether = useWhetherHere("outing", params.id);
  const outing = useRecord("outing", params.id);
  if (whether === "missing") return <NotHere />;
  if (!outing) return <p class="screen quiet">{t("outing.loading")}</p>;
  return <Details outing={outing} />;
}

const CONFIDENCES = ["1", "2", "3", "4", "5"] as const;
type Confidence = (typeof CONFIDENCES)[number];

function Details({ outing }: { outing: SavedRecord<"outing"> }) {
  const { body, record_id } = outing;
  const mayWrite = useRole() !== "reader";
  const change = (part: Partial<Outing>) => edit(outing, part).catch(() => toast(t("outing.details_not_saved")));
  const confidence = body.rider_confidence === null ? null : (String(body.rider_confidence) as Confidence);
  return (
    <Screen title={t("outing.details")} back={`/outing/${record_id}`}>
      {outing.fork && <ForkNotice record={outing} />}
      <fieldset class="form" disabled={!mayWrite}>
        <Choices
          label={t("outing.confidence")} big optional value={confidence} choices={CONFIDENCES.map((value) => ({ value, words: t(`outing.confidence_${value}`) }))}
          onChoose={(value) => void change({ rider_confidence: value === null ? null : Number(value) })}
        />
        <Choices label={t("outing.going")} big optional value={body.going} choices={GOING.map((value) => ({ value, words: t(`going.${value}`) }))} onChoose={(going) => void change({ going })} />
        <Stepper label={t("outing.minutes")} value={body.minutes_in_saddle} step={5} least={5} most={1440} from={30} show={(n) => t("outing.minutes_are", { n })} onChange={(minutes_in_saddle) => void change({ minutes_in_saddle })} />
        <Where body={body} change={change} />
        <OutingNotes outing={outing} change={change} />
      </fieldset>
      <About ids={[record_id]} what={t("outing.details")} />
      <p><Link class="button" href={`/outing/${record_id}/traces`}>{t("location.traces")}</Link></p>
      {mayWrite && <Ending outing={outing} change={change} />}
    </Screen>
  );
}

type Change = (part: Partial<Outing>) => Promise<unknown>;

function Where({ body, change }: { body: Outing; change: Change }) {
  const fields = useRecords("field") ?? [];
  return (
    <>
      <label class="text-box">
        <span class="text-box__label">{t("outing.field")}</span>
        <select value={body.field_id ?? ""} onChange={(event) => void change({ field_id: event.currentTarget.value || null })}>
          <option value="">{t("outing.no_field")}</option>
          {fields.map((field) => <option value={field.record_id} key={field.record_id}>{field.body.name}</option>)}
        </select>
      </label>
      <Choices label={t("outing.activity")} value={body.activity} choices={ACTIVITIES.map((value) => ({ value, words: t(`activity.${value}`) }))} onChoose={(activity) => activity && void change({ activity })} />
      <TextBox label={t("outing.date")} type="date" value={body.date} onInput={(date) => /^\d{4}-\d\d-\d\d$/.test(date) && void change({ date })} />
      <label class="tick">
        <input type="checkbox" checked={body.from_memory} onChange={() => void change({ from_memory: !body.from_memory })} />
        <span>{t("outing.from_memory")}</span>
      </label>
    </>
  );
}

function OutingNotes({ outing, change }: { outing: SavedRecord<"outing">; change: Change }) {
  const keep = (notes: string | null) => change({ notes }).then(Boolean);
  return (
    <KeptText
      draftKey={`outing ${outing.record_id} notes`} said={outing.body.notes} keep={keep}
      label={t("outing.outing_notes")} hint={t("outing.outing_notes_hint")} lines={3} most={4000}
    />
  );
}

function Ending({ outing, change }: { outing: SavedRecord<"outing">; change: Change }) {
  const [, navigate] = useLocation();
  const { closed } = outing.body;
  const finish = async () => {
    if (await change({ closed: !closed })) navigate(closed ? `/outing/${outing.record_id}` : "/");
  };
  const remove = async () => {
    const gone = await takeBack(outing.record_id).then(() => true, () => false);
    if (!gone) return toast(t("outing.details_not_saved"));
    toast(t("outing.taken_back"), () => putBack(outing.record_id));
    navigate("/", { replace: true });
  };
  return (
    <>
      <BigButton tone="main" onClick={() => void finish()}>{closed ? t("outing.reopen") : t("outing.finish")}</BigButton>
      <p><Button tone="stop" onClick={() => void remove()}>{t("outing.take_back")}</Button></p>
    </>
  );
}
