import "./watch.css";

import { useMemo, useState } from "preact/hooks";
import { Link, useLocation } from "wouter-preact";

import { CanterPicture } from "../../charts/CanterPicture.tsx";
import { faceText } from "../../pace/clockface.ts";
import { lastCanters, type Ridden } from "../../pace/comparison.ts";
import { lateness } from "../../pace/lateness.ts";
import { earlyOrLate, headline, plusMinus, rounded, tenths, verdict } from "../../pace/phrases.ts";
import { speed } from "../../pace/speed.ts";
import type { TimedCanter } from "../../entries/bodies.ts";
import { BigButton } from "../../parts/BigButton.tsx";
import { Section } from "../../parts/Card.tsx";
import { Choices } from "../../parts/Choices.tsx";
import { Icon } from "../../parts/Icon.tsx";
import { NotHere } from "../../parts/NotHere.tsx";
import { Screen } from "../../parts/Screen.tsx";
import { toast } from "../../parts/toast.ts";
import { edit, putBack, type SavedRecord, takeBack, useRecord, useRecords, useRole, useWhetherHere } from "../../store/book.ts";
import { showDistance } from "../../units/index.ts";
import { inside, say, t } from "../../words/index.ts";
import { CanterTraces, takeBackTraces } from "../trace/CanterTraces.tsx";
import { CanterNote } from "./CanterNote.tsx";
import { ClockNotice } from "./ClockNotice.tsx";
import { FenceStrip } from "./FenceStrip.tsx";
import { Key } from "./Key.tsx";
import { OddNotice } from "./OddNotice.tsx";
import { RunsOfSet, setOf, useRunsOfSet } from "./RunsOfSet.tsx";
import { stopwatch } from "./thisWatch.ts";
import { useWatchKeys } from "./useWatchKeys.ts";

type Canter = SavedRecord<"timed_canter">;

/** One timed canter: its speed, how sure that is, early or late, and the last ones beside it. */
export function CanterScreen({ params: { id } }: { params: { id: string } }) {
  const whether = useWhetherHere("timed_canter", id);
  const canter = useRecord("timed_canter", id);
  if (whether === "missing") return <NotHere />;
  if (!canter) return <Screen title={t("watch.result_title")} back="/watch">{null}</Screen>;
  return <CanterView canter={canter} />;
}

const NERVOUS_MS = 1500;

function CanterView({ canter }: { canter: Canter }) {
  const [, navigate] = useLocation();
  const writes = useRole() !== "reader";
  const track = useRecord("track", canter.body.track_id ?? "");
  const again = (): void => navigate(`/watch?again=${canter.record_id}`);
  const [since] = useState(() => performance.now());
  const fresh = stopwatch.saved_id.value === canter.record_id;
  useWatchKeys((key) => {
    // right after the stop the one button of a clicker goes on with the set; a nervous second press does not
    const goesOn = key === "start_stop" && fresh && performance.now() - since > NERVOUS_MS;
    if (writes && (key === 1 || goesOn)) again();
  });
  return (
    <Screen title={track?.body.name ?? t("watch.result_title")} back={`/outing/${canter.body.outing_id}`}>
      <Headline body={canter.body} />
      <ClockNotice canter={canter} />
      <OddNotice canter={canter} />
      <CanterTraces canter={canter} />
      <Beside canter={canter} />
      <FenceStrip canter={canter} writes={writes} />
      {writes && <Flags canter={canter} />}
      {writes && <CanterNote canter={canter} />}
      <p class="buttons"><Link class="button" href={`/outing/${canter.body.outing_id}`}>{t("watch.to_outing")}</Link></p>
      {writes && (
        <div class={fresh ? "watch__after watch__after--near" : "watch__after"}>
          <BigButton tone="stop" onClick={() => void throwAway(canter.record_id, navigate)}>{t("watch.throw_away")}</BigButton>
          <BigButton tone="main" onClick={again} detail={t("watch.again_hint")}>{t("watch.again")} <Key of="1" /></BigButton>
        </div>
      )}
    </Screen>
  );
}

async function throwAway(record_id: string, navigate: (to: string, how: { replace: boolean }) => void): Promise<void> {
  await takeBack(record_id);
  const putBackTraces = await takeBackTraces(record_id);
  stopwatch.ready();
  navigate("/watch", { replace: true });
  toast(t("watch.canter_thrown_away"), async () => {
    await putBack(record_id);
    await putBackTraces();
    navigate(`/watch/canter/${record_id}`, { replace: true });
  });
}

/** The number first, then what it was made of, then what it means. */
function Headline({ body }: { body: TimedCanter }) {
  const pace = speed(body);
  const late = body.target_speed_mpm === null ? null : lateness(pace, body.target_speed_mpm);
  return (
    <section class="result" aria-live="polite">
      <p class="unseen">{say(headline(pace, late))}</p>
      <p class="result__speed" aria-hidden="true">
        <span class="result__number">{rounded(pace.speed_mpm)}</span>
        <span class="result__unit">± {plusMinus(pace)} {t("watch.picture_mpm")}</span>
      </p>
      {late && (
        <>
          <p class="result__late">{say(earlyOrLate(late.seconds_late, "seconds"))}</p>
          <p>{t("watch.late_line", { metres: say(earlyOrLate(late.metres_late, "metres")), target: rounded(late.target_speed_mpm) })}</p>
          <p class={`result__verdict result__verdict--${late.verdict}`}>{say(verdict(late))}</p>
        </>
      )}
      <p class="quiet">
        {t("watch.over", { time: faceText(body.elapsed_ms), distance: showDistance(body.distance_m) })} ({t("watch.track_measured", { how: inside(t(`measured_by.${body.measured_by}`)), u: `${tenths(pace.distance_u_m)} m` })}
        {body.start === "standing" && `, ${body.countdown_s === null ? t("watch.standing_start") : inside(t("watch.countdown_start", { n: body.countdown_s }))}`})
      </p>
      <p class="quiet result__saved"><Icon name="tick" />{t("watch.saved")}</p>
    </section>
  );
}

/** Beside the other canters of its set, or where it is none, the last ones over this stretch. */
function Beside({ canter }: { canter: Canter }) {
  const runs = useRunsOfSet(canter.body.outing_id, setOf(canter));
  if (!runs) return null;
  return runs.length > 1 ? <RunsOfSet runs={runs} canter={canter} /> : <Comparison canter={canter} />;
}

function Comparison({ canter }: { canter: Canter }) {
  const { track_id, outing_id } = canter.body;
  const others = useRecords("timed_canter", useMemo(() => (track_id === null ? { outing_id } : { track_id }), [track_id, outing_id]));
  if (!others) return null;
  return (
    <Section title={t("watch.picture_title")}>
      <CanterPicture compared={lastCanters(canter as Ridden, others as Ridden[])} target_mpm={canter.body.target_speed_mpm} />
    </Section>
  );
}

function Flags({ canter }: { canter: Canter }) {
  const choose = (value: string | null): void => void edit(canter, { over_fences: value === "fences" }).catch(() => undefined);
  return (
    <Choices
      label={t("watch.ground")} value={canter.body.over_fences ? "fences" : "flat"} onChoose={choose}
      choices={[{ value: "flat", words: t("watch.on_flat") }, { value: "fences", words: t("watch.over_fences") }]}
    />
  );
}
