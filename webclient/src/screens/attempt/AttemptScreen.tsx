import { Link, useLocation } from "wouter-preact";

import { type Attempt, type Outcome, OUTCOMES } from "../../entries/bodies.ts";
import { BigButton } from "../../parts/BigButton.tsx";
import { Choices } from "../../parts/Choices.tsx";
import { NotHere } from "../../parts/NotHere.tsx";
import { Screen } from "../../parts/Screen.tsx";
import { TextBox } from "../../parts/TextBox.tsx";
import { toast } from "../../parts/toast.ts";
import type { Letter } from "../../recording/combination.ts";
import { isCombination, letters } from "../../recording/combination.ts";
import { DIMENSION_LIMITS_CM, STEP_FROM_CM } from "../../recording/dimensions.ts";
import { mannerOf } from "../../recording/manner.ts";
import { isShowJump } from "../../recording/outcomes.ts";
import { putBack, type SavedRecord, takeBack, useDraft, useRecord, useRole } from "../../store/book.ts";
import { useLive } from "../../store/live.ts";
import { here } from "../../store/place.ts";
import { findRecord } from "../../store/read.ts";
import { showMoment } from "../../words/dates.ts";
import { t } from "../../words/index.ts";
import "../../style/recording.css";
import { StepLength } from "../fence/StepLength.tsx";
import { About } from "../media/About.tsx";
import { Notes } from "../note/Notes.tsx";
import { MannerChips } from "../outing/MannerChips.tsx";
import { placeName } from "../outing/names.ts";
import { ForkNotice } from "./ForkNotice.tsx";
import { History } from "./History.tsx";
import { type Change, useEdit } from "./useEdit.ts";

/** One attempt: everything about it can be changed, and what it said before stays to be read. */
export function AttemptScreen({ params }: { params: { id: string } }) {
  const found = useLive(async () => ({ row: await findRecord(here(), params.id) }), [params.id]);
  const attempt = useRecord("attempt", params.id);
  if (found && !found.row) return <NotHere />;
  if (found?.row?.shelf === "gone") return <TakenBack record_id={params.id} />;
  if (!attempt) return <p class="screen quiet">{t("attempt.loading")}</p>;
  return <Edit attempt={attempt} key={attempt.record_id} />;
}

function Edit({ attempt }: { attempt: SavedRecord<"attempt"> }) {
  const [body, change] = useEdit(attempt);
  const fence = useRecord("fence", body.fence_id);
  const outing = useRecord("outing", body.outing_id);
  const mayWrite = useRole() !== "reader";
  const title = placeName(body, fence?.body);
  const back = `/outing/${body.outing_id}`;
  const showJump = !!fence && !!outing && isShowJump(fence.body, outing.body.activity);
  return (
    <Screen title={title} back={back}>
      <p class="quiet">{t("attempt.by_at", { name: attempt.author_name ?? t("attempt.somebody"), moment: showMoment(attempt.recorded_at) })}</p>
      {attempt.fork && <ForkNotice record={attempt} />}
      <fieldset class="form" disabled={!mayWrite}>
        <Choices<Outcome>
          label={t("attempt.outcome")} big value={body.outcome} onChoose={(outcome) => outcome && void change({ outcome })}
          choices={OUTCOMES.filter((each) => each !== "knockdown" || showJump || body.outcome === each).map((value) => ({ value, words: t(`outcome.${value}`) }))}
        />
        {fence && isCombination(fence.body) && <ElementChoice body={body} all={letters(fence.body)} change={change} />}
        <MannerChips manner={mannerOf(body)} profile={fence?.body.profile ?? "log"} open onChange={(manner) => void change(manner)} />
        {(showJump || body.height_cm !== null) && (
          <StepLength
            label={t("attempt.height")} value_cm={body.height_cm ?? fence?.body.height_cm ?? null} limits_cm={DIMENSION_LIMITS_CM.height_cm}
            from_cm={STEP_FROM_CM.height_cm} onChange={(height_cm) => void change({ height_cm })}
          />
        )}
        {body.note !== null && <OwnNote record_id={attempt.record_id} body={body} change={change} />}
      </fieldset>
      <About ids={[attempt.record_id]} what={title} />
      <Notes about_id={attempt.record_id} />
      <p><Link class="button" href={`/note/${attempt.record_id}?outing=${body.outing_id}`}>{t("attempt.add_note")}</Link></p>
      <History record_id={attempt.record_id} mayWrite={mayWrite} />
      {mayWrite && <TakeBack attempt={attempt} back={back} />}
    </Screen>
  );
}

function ElementChoice({ body, all, change }: { body: Attempt; all: Letter[]; change: Change<"attempt"> }) {
  return <Choices<Letter> label={t("outing.element")} big value={body.element} choices={all.map((value) => ({ value, words: value }))} onChoose={(element) => element && void change({ element })} />;
}

function OwnNote({ record_id, body, change }: { record_id: string; body: Attempt; change: Change<"attempt"> }) {
  const [text, setText, clear] = useDraft(`attempt ${record_id} note`, body.note ?? "");
  const keep = async () => {
    if (text.trim() !== body.note && (await change({ note: text.trim() || null }))) clear();
  };
  return (
    <div onFocusOut={() => void keep()}>
      <TextBox label={t("attempt.note")} value={text} onInput={setText} lines={2} most={2000} />
    </div>
  );
}

function TakeBack({ attempt, back }: { attempt: SavedRecord<"attempt">; back: string }) {
  const [, navigate] = useLocation();
  const remove = async () => {
    const gone = await takeBack(attempt.record_id).then(() => true, () => false);
    if (!gone) return toast(t("attempt.not_changed"));
    toast(t("attempt.taken_back"), () => putBack(attempt.record_id));
    navigate(back);
  };
  return <BigButton tone="stop" onClick={() => void remove()}>{t("attempt.take_back")}</BigButton>;
}

function TakenBack({ record_id }: { record_id: string }) {
  const mayWrite = useRole() !== "reader";
  const restore = () => putBack(record_id).catch(() => toast(t("attempt.not_changed")));
  return (
    <Screen title={t("attempt.was_taken_back")} back="/">
      {mayWrite && <BigButton tone="main" onClick={() => void restore()}>{t("attempt.put_back")}</BigButton>}
      <History record_id={record_id} mayWrite={mayWrite} />
    </Screen>
  );
}
