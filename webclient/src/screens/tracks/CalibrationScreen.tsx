import { useMemo, useState } from "preact/hooks";
import { useLocation, useSearch } from "wouter-preact";

import { civilDate } from "../../entries/entry.ts";
import { BigButton, Button } from "../../parts/BigButton.tsx";
import { Row, Rows, Section } from "../../parts/Card.tsx";
import { Choices } from "../../parts/Choices.tsx";
import { NotHere } from "../../parts/NotHere.tsx";
import { Notice } from "../../parts/Notice.tsx";
import { Screen } from "../../parts/Screen.tsx";
import { TextBox } from "../../parts/TextBox.tsx";
import { toast } from "../../parts/toast.ts";
import { edit, putBack, save, type SavedRecord, takeBack, useAsOpened, useDraft, useRecord, useRecords, useRole, useWhetherHere } from "../../store/book.ts";
import { useBusy } from "../../update/busy.ts";
import { decimal } from "../../words/decimal.ts";
import { t } from "../../words/index.ts";
import { factorWords } from "./factorWords.ts";
import {
  BLANK, type CalibrationDraft, calibrationBody, draftOf, factorOf, INSTRUMENTS, isOdd, MOST_WALKS, readDraft, STEPS_M, troubles, walkedOf, withInstrument,
} from "./calibrationDraft.ts";
import { typed } from "./trackDraft.ts";

type Saved = SavedRecord<"calibration">;

/** A new calibration; afterwards back to where it was asked for. */
export function NewCalibration() {
  return <Calibrate />;
}

/** One calibration, to read or to put right. Tracks measured with it keep what they were measured as. */
export function EditCalibration({ params: { id } }: { params: { id: string } }) {
  const whether = useWhetherHere("calibration", id);
  const calibration = useRecord("calibration", id);
  if (whether === "missing") return <NotHere />;
  if (!calibration) return <Screen title={t("calibration.title")} back="/tracks">{null}</Screen>;
  return <Calibrate calibration={calibration} key={id} />;
}

function Calibrate({ calibration }: { calibration?: Saved }) {
  useBusy();
  const writes = useRole() !== "reader";
  return (
    <Screen title={calibration?.body.instrument ?? t("calibration.title")} back="/tracks" actions={calibration && writes && <TakeAway record_id={calibration.record_id} />}>
      <p>{t("calibration.how")}</p>
      <CalibrationForm {...(calibration && { calibration })} writes={writes} />
      {calibration && <TracksWith calibration_id={calibration.record_id} />}
    </Screen>
  );
}

function CalibrationForm({ calibration, writes }: { calibration?: Saved; writes: boolean }) {
  const [, navigate] = useLocation();
  const back = new URLSearchParams(useSearch()).get("back") ?? "/tracks";
  const asOpened = useAsOpened(calibration);
  const first = calibration ? draftOf(calibration.body) : BLANK;
  const [kept, keep, clear] = useDraft(`calibration ${calibration?.record_id ?? "new"}`, JSON.stringify(first));
  const [asked, setAsked] = useState(false);
  const draft = readDraft(kept, first);
  const change = (more: Partial<CalibrationDraft>): void => keep(JSON.stringify({ ...draft, ...more }));
  const lacks = (what: ReturnType<typeof troubles>[number]): string | null => (asked && troubles(draft).includes(what) ? t(`calibration.${what}`) : null);
  const store = async (event: Event): Promise<void> => {
    event.preventDefault();
    setAsked(true);
    const body = calibrationBody(draft, civilDate(new Date()), calibration?.body ?? null);
    const saved = body && (await (asOpened ? edit(asOpened, body) : save("calibration", body)).catch(() => null)); // the frame says why
    if (!saved) return;
    clear();
    navigate(back === "/tracks" ? back : `${back}?calibration=${saved.record_id}`, { replace: true });
  };
  return (
    <form class="form" onSubmit={(event) => void store(event)}>
      <fieldset class="form" disabled={!writes}>
        <TextBox label={t("calibration.instrument")} hint={t("calibration.instrument_hint")} value={draft.instrument} most={120} onInput={(instrument) => change({ instrument })} trouble={lacks("need_instrument")} />
        <Choices
          label={t("calibration.sort")} value={draft.measured_by} onChoose={(by) => by && change(withInstrument(draft, by))}
          choices={INSTRUMENTS.map((value) => ({ value, words: t(`track.by_${value}`) }))}
        />
        <TextBox label={t("calibration.taped")} inputMode="decimal" value={draft.taped} most={10} onInput={(taped) => change({ taped })} trouble={lacks("need_taped")} />
        <Walks draft={draft} change={change} trouble={lacks("need_walks")} />
        <Choices
          label={t("calibration.step")} value={draft.step} onChoose={(step) => step && change({ step })}
          choices={STEPS_M.map((value) => ({ value: value as string, words: t(`calibration.step_${value === "1" ? "1m" : value === "0.1" ? "10cm" : "1cm"}`) }))}
        />
        <TextBox label={t("track.notes")} hint={t("calibration.note_hint")} value={draft.note} lines={2} most={2000} onInput={(note) => change({ note })} />
      </fieldset>
      <Found draft={draft} />
      {writes && <BigButton tone="main" type="submit">{t("calibration.save")}</BigButton>}
    </form>
  );
}

interface WalksProps {
  draft: CalibrationDraft;
  change: (more: Partial<CalibrationDraft>) => void;
  trouble: string | null;
}

// A box a walk: the number pads of phones have no comma to put between them.
function Walks({ draft, change, trouble }: WalksProps) {
  const { walks, measured_by } = draft;
  const unit = measured_by === "paces" ? t("calibration.in_paces") : t("calibration.in_metres");
  const bad = Math.max(0, walks.findIndex((walk) => !(typed(walk) >= 1)));
  const type = (n: number, text: string): void => change({ walks: walks.map((walk, at) => (at === n ? text : walk)) });
  return (
    <>
      {walks.map((walk, n) => (
        <TextBox
          key={n} label={t("calibration.walk", { n: n + 1, unit })} inputMode="decimal" value={walk} most={10} onInput={(text) => type(n, text)}
          trouble={n === bad ? trouble : null}
        />
      ))}
      {walks.length < MOST_WALKS && <p><Button onClick={() => change({ walks: [...walks, ""] })}>{t("calibration.another")}</Button></p>}
    </>
  );
}

function Found({ draft }: { draft: CalibrationDraft }) {
  const found = factorOf(draft);
  if (!found) return <p class="quiet">{t("calibration.why")}</p>;
  return (
    <div aria-live="polite">
      <p><strong>{factorWords(found)}</strong></p>
      <p class="quiet">{t("calibration.scatter", { scatter: decimal(found.scatter_m.toFixed(2)), n: walkedOf(draft).length })}</p>
      {isOdd(draft, found) && <Notice tone="attention"><p>{t("calibration.odd")}</p></Notice>}
    </div>
  );
}

function TracksWith({ calibration_id }: { calibration_id: string }) {
  const tracks = useRecords("track");
  const mine = useMemo(() => (tracks ?? []).filter((one) => one.body.calibration_id === calibration_id), [tracks]);
  if (mine.length === 0) return null;
  return (
    <Section title={t("calibration.tracks")}>
      <p class="quiet">{t("calibration.tracks_keep")}</p>
      <Rows>{mine.map(({ record_id, body }) => <Row href={`/tracks/${record_id}/edit`} title={body.name} key={record_id} />)}</Rows>
    </Section>
  );
}

function TakeAway({ record_id }: { record_id: string }) {
  const [, navigate] = useLocation();
  const takeAway = async (): Promise<void> => {
    await takeBack(record_id);
    navigate("/tracks", { replace: true });
    toast(t("calibration.taken_back"), () => putBack(record_id));
  };
  return <Button tone="stop" onClick={() => void takeAway()}>{t("calibration.take_back")}</Button>;
}
