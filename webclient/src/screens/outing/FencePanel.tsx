// The chosen fence: what happened here today, how the next attempt is met, and the big buttons in reach of
// one thumb. Nothing here moves between two taps.

import { useEffect, useRef, useState } from "preact/hooks";
import { Link } from "wouter-preact";

import type { Outcome } from "../../entries/bodies.ts";
import { uuid7 } from "../../entries/uuid7.ts";
import { BigButton } from "../../parts/BigButton.tsx";
import { Icon } from "../../parts/Icon.tsx";
import { makeAttempt } from "../../recording/attempt.ts";
import { isCombination, type Letter, nextPlace, type Place, placeAt } from "../../recording/combination.ts";
import type { Manner } from "../../recording/manner.ts";
import { isFall, isShowJump } from "../../recording/outcomes.ts";
import { atElement, countOf, tallyOf } from "../../recording/tally.ts";
import type { SavedRecord } from "../../store/book.ts";
import { t } from "../../words/index.ts";
import { announceTap } from "./announce.ts";
import { ElementRow } from "./ElementRow.tsx";
import { showStopNotice } from "./fallShown.ts";
import { HeightNow, heightNow } from "./HeightNow.tsx";
import { MannerChips } from "./MannerChips.tsx";
import { Neighbours } from "./Neighbours.tsx";
import { fenceFacts, isToday, tallyWords } from "./names.ts";
import { OutcomeGrid } from "./OutcomeGrid.tsx";
import { takeTap, wasMeant } from "./recorder.ts";
import { sequenceLeft } from "./sequenceLeft.ts";
import { TapBar } from "./TapBar.tsx";
import { mannerUsed, useManner } from "./useManner.ts";
import type { OutingView } from "./useOuting.ts";

interface Props {
  view: OutingView;
  fence: SavedRecord<"fence">;
  mayRecord: boolean;
}

// One finger can touch two controls that follow each other on one spot: they share a bounce filter.
const CONTROL = "panel";

/** Where nothing sticks to the bottom, the buttons are scrolled to once. The same as in recording.css. */
const LOW = "(max-height: 36rem)";

export function FencePanel({ view, fence, mayRecord }: Props) {
  const [picked, setPicked] = useState<Letter | null>(null);
  const [choosing, setChoosing] = useState(false);
  const controls = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (matchMedia(LOW).matches) controls.current?.scrollIntoView({ block: "end" });
  }, [choosing]);
  const place = placeOf(view, fence, picked);
  const [manner, setManner] = useManner(view, fence.record_id, place.element);
  const here = view.attempts.filter((attempt) => attempt.body.fence_id === fence.record_id);
  const record = (outcome: Outcome, event: MouseEvent) => {
    if (!wasMeant(CONTROL, event)) return;
    setPicked(null);
    setChoosing(false);
    tapped(view, fence, outcome, place, manner);
  };
  const open = (event: MouseEvent) => wasMeant(CONTROL, event) && setChoosing(!choosing);
  return (
    <section class="panel" aria-label={fence.body.label} onKeyDown={ignoreHeldKeys}>
      <p class="panel__facts"><span class="quiet">{fenceFacts(fence.body)}</span><span>{t(isToday(view) ? "outing.today" : "outing.so_far", { tally: tallyWords(tallyOf(here)) })}</span></p>
      {!mayRecord && <Neighbours view={view} fence={fence} />}
      {mayRecord && <>
        <MannerChips manner={manner} profile={partProfile(fence, place)} onChange={setManner} />
        {isShowJump(fence.body, view.outing.body.activity) && <HeightNow view={view} fence={fence} />}
        <div class="panel__controls" ref={controls}>
          {!choosing && <Neighbours view={view} fence={fence} />}
          <TapBar view={view} />
          {isCombination(fence.body) && <ElementRow fence={fence.body} at={place.element} here={here} onPick={(letter, event) => wasMeant(CONTROL, event) && setPicked(letter)} />}
          {choosing ? <OutcomeGrid showJump={isShowJump(fence.body, view.outing.body.activity)} element={place.element} onOutcome={record} onCancel={open} />
            : <ClearOrNot view={view} here={atElement(here, place.element)} place={place} fence_id={fence.record_id} onClear={record} onOther={open} />}
        </div>
      </>}
    </section>
  );
}

interface ClearProps {
  view: OutingView;
  here: OutingView["attempts"];
  place: Place;
  fence_id: string;
  onClear: (outcome: Outcome, event: MouseEvent) => void;
  onOther: (event: MouseEvent) => void;
}

function ClearOrNot({ view, here, place, fence_id, onClear, onOther }: ClearProps) {
  const count = countOf(tallyOf(here), "clear");
  const about = here.at(-1)?.record_id ?? fence_id;
  return (
    <>
      <button type="button" class="big-button big-button--main clear-button" onClick={(event) => onClear("clear", event)}>
        <span class="clear-button__word">{place.element ? t("outing.clear_at", { element: place.element }) : t("outcome.clear")}</span>
        <Count words={t(isToday(view) ? "outing.clear_today" : "outing.clear_so_far", { n: count })} number={String(count)} />
      </button>
      <div class="panel__under">
        <BigButton onClick={onOther}>{t("outing.not_clear")}</BigButton>
        <Link class="big-button" href={`/note/${about}?outing=${view.outing.record_id}`}><Icon name="note" /><span class="unseen">{t("outing.note_here")}</span></Link>
      </div>
    </>
  );
}

/** The number large enough to be read at arm's length. */
function Count({ words, number }: { words: string; number: string }) {
  const [before, after] = words.split(number);
  return <span class="clear-button__count">{before}<span class="clear-button__number">{number}</span>{after}</span>;
}

function placeOf(view: OutingView, fence: SavedRecord<"fence">, picked: Letter | null): Place {
  const known = [fence.record_id, fence.body, view.attempts, Date.now(), sequenceLeft()] as const;
  return picked ? placeAt(picked, ...known) : nextPlace(...known);
}

function partProfile(fence: SavedRecord<"fence">, place: Place) {
  return (fence.body.elements.find((element) => element.letter === place.element) ?? fence.body).profile;
}

/** Shown first, then stored; what a person hears and the stop notice wait for the store's answer. */
export function tapped(view: OutingView, fence: SavedRecord<"fence">, outcome: Outcome, place: Place, manner: Manner): void {
  const outing_id = view.outing.record_id;
  const tap = { outing_id, fence_id: fence.record_id, outcome, place, manner, height_cm: heightNow(view, fence) };
  const body = makeAttempt(tap, uuid7);
  const before = view.attempts.filter((attempt) => attempt.body.fence_id === fence.record_id && attempt.body.element === place.element);
  const { record_id, done } = takeTap(body);
  mannerUsed(outing_id, fence.record_id, place.element);
  void done.then((state) => announceTap(body, fence.body, isToday(view), countOf(tallyOf(before), outcome) + 1, state));
  if (isFall(outcome)) showStopNotice(record_id, outing_id, done);
}

/** A key held down is one tap, not thirty. */
function ignoreHeldKeys(event: KeyboardEvent): void {
  if (event.repeat && (event.key === "Enter" || event.key === " ")) event.preventDefault();
}
