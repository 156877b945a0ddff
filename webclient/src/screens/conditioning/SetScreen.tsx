import "../watch/watch.css";
import "../../style/conditioning.css";

import { Link, useLocation } from "wouter-preact";

import { minutesSeconds } from "../../conditioning/phrases.ts";
import { nextCheck } from "../../conditioning/cues.ts";
import { type SetRun, totalMs } from "../../conditioning/set.ts";
import { BigButton, Button } from "../../parts/BigButton.tsx";
import { Section } from "../../parts/Card.tsx";
import { NotHere } from "../../parts/NotHere.tsx";
import { Screen } from "../../parts/Screen.tsx";
import { toast } from "../../parts/toast.ts";
import { putBack, type SavedRecord, takeBack, useRecord, useRole, useWhetherHere } from "../../store/book.ts";
import { showDay } from "../../words/dates.ts";
import { t } from "../../words/index.ts";
import { CountDown } from "./CountDown.tsx";
import { Judgement } from "./Judgement.tsx";
import { RateForm } from "./RateForm.tsx";
import { RateList } from "./RateList.tsx";
import { SetNote } from "./SetNote.tsx";
import { setRunner } from "./thisSet.ts";
import { useCue } from "./useCue.ts";

const CHECK_SHOWN_MS = 60_000;

/** One interval set: what was ridden, the rates after it, and what they say. */
export function SetScreen({ params: { id } }: { params: { id: string } }) {
  const whether = useWhetherHere("interval_set", id);
  const set = useRecord("interval_set", id);
  if (whether === "missing") return <NotHere />;
  if (!set) return <Screen title={t("conditioning.title")} back="/">{null}</Screen>;
  return <SetView set={set} />;
}

function SetView({ set }: { set: SavedRecord<"interval_set"> }) {
  const outing = useRecord("outing", set.body.outing_id);
  const horse = useRecord("horse", outing?.body.horse_id ?? "");
  const writes = useRole() !== "reader";
  const run = setRunner.run.value?.id === set.record_id ? setRunner.run.value : null;
  const title = horse && outing ? t("conditioning.set_title", { horse: horse.body.name, day: showDay(outing.body.date) }) : t("conditioning.title");
  return (
    <Screen title={title} back={`/outing/${set.body.outing_id}`}>
      {run && <Live run={run} />}
      {horse && <Judgement recoveries={set.body.recoveries} normals={horse.body} horse_id={horse.record_id} />}
      <Section title={t("conditioning.rates")}>
        <RateList set={set} writes={writes} />
        {writes && <RateForm set={set} run={run} />}
      </Section>
      <Ridden set={set} />
      {writes && <SetNote set={set} />}
      {writes && <Doors set={set} />}
    </Screen>
  );
}

/** While the clock of the recovery runs: the time since the last canter and when the rates are next due. */
function Live({ run }: { run: SetRun }) {
  const elapsed_ms = setRunner.elapsed()?.elapsed_ms ?? totalMs(run.segments);
  const next = nextCheck(run.segments, elapsed_ms);
  const cue = useCue(CHECK_SHOWN_MS);
  return (
    <section class="set-live">
      <CountDown run={run} />
      <p class="quiet">{t("conditioning.since")}</p>
      <p class="set-live__next">{next ? t("conditioning.next_due", { minute: next.minute, time: minutesSeconds(next.in_ms) }) : t("conditioning.none_due")}</p>
      {cue?.kind === "check" && <p class="watch__cue" role="status">{t("conditioning.cue_check")}</p>}
      <p><Button onClick={() => void setRunner.letGo()}>{t("conditioning.rates_done")}</Button></p>
    </section>
  );
}

function Ridden({ set: { body } }: { set: SavedRecord<"interval_set"> }) {
  return (
    <Section title={t("conditioning.ridden")}>
      <ul>
        {body.intervals.map(({ work_s, rest_s, speed_mpm }, n) => {
          const [length, walk] = [minutesSeconds(1000 * work_s), minutesSeconds(1000 * rest_s)];
          const work = speed_mpm === null ? length : t("conditioning.work_at", { length, speed: speed_mpm });
          return <li key={n}>{rest_s > 0 ? t("conditioning.interval_walk", { n: n + 1, work, walk }) : t("conditioning.interval", { n: n + 1, work })}</li>;
        })}
      </ul>
      {body.from_memory && <p class="quiet">{t("conditioning.memory_mark")}</p>}
    </Section>
  );
}

function Doors({ set }: { set: SavedRecord<"interval_set"> }) {
  const [, navigate] = useLocation();
  const throwAway = async (): Promise<void> => {
    await takeBack(set.record_id);
    if (setRunner.run.value?.id === set.record_id) await setRunner.letGo();
    navigate(`/outing/${set.body.outing_id}`, { replace: true });
    toast(t("conditioning.taken_back"), () => putBack(set.record_id));
  };
  return (
    <div class="controls">
      <Link class="big-button" href={`/outing/${set.body.outing_id}`}>{t("conditioning.to_outing")}</Link>
      <Link class="big-button" href={`/conditioning?outing=${set.body.outing_id}`}>{t("conditioning.again")}</Link>
      <BigButton tone="stop" onClick={() => void throwAway().catch(() => undefined)}>{t("conditioning.throw_away")}</BigButton>
    </div>
  );
}
