import { useMemo } from "preact/hooks";

import type { TimedCanter } from "../../entries/bodies.ts";
import { faceText } from "../../pace/clockface.ts";
import { type Leg, legs } from "../../pace/legs.ts";
import { plusMinus, rounded } from "../../pace/phrases.ts";
import { STRIP_HEIGHT, STRIP_WIDTH, stripOf } from "../../pace/strip.ts";
import { Button } from "../../parts/BigButton.tsx";
import { Row, Rows, Section } from "../../parts/Card.tsx";
import { Notice } from "../../parts/Notice.tsx";
import { Stepper } from "../../parts/Stepper.tsx";
import { madeAt } from "../../recording/made.ts";
import { edit, type SavedRecord, useRecords } from "../../store/book.ts";
import { t } from "../../words/index.ts";
import { placeName } from "../outing/names.ts";

type Canter = SavedRecord<"timed_canter">;
type Met = SavedRecord<"attempt">;

const offset = ({ body }: Met): number => body.canter_offset_ms ?? 0;

/** What happened on the way: flags with the speed between them, fences at their time; both can be put right. */
export function FenceStrip({ canter, writes }: { canter: Canter; writes: boolean }) {
  const { record_id, body } = canter;
  const attempts = useRecords("attempt", useMemo(() => ({ outing_id: body.outing_id }), [body.outing_id]));
  const fences = useRecords("fence");
  if (!attempts || !fences) return null;
  const tied = attempts.filter((one) => one.body.canter_id === record_id).sort((one, other) => offset(one) - offset(other));
  const free = attempts.filter((one) => one.body.canter_id === null);
  const name = (one: Met): string => placeName(one.body, fences.find((fence) => fence.record_id === one.body.fence_id)?.body);
  return (
    <>
      <Splits body={body} />
      {(tied.length > 0 || (body.over_fences && free.length > 0)) && (
        <Section title={t("watch.fences_on_the_way")}>
          {tied.length > 0 && !body.over_fences && <Notice tone="attention"><p>{t("watch.fences_but_flat")}</p></Notice>}
          <Drawing body={body} tied={tied} />
          <Rows>
            {tied.map((one, n) => (
              <Row
                href={`/attempt/${one.record_id}`} end={n + 1} key={one.record_id}
                title={`${faceText(offset(one))} ${t("watch.fence_line", { fence: name(one), outcome: t(`outcome.${one.body.outcome}`) })}`}
              />
            ))}
          </Rows>
          {writes && <Change canter={canter} tied={tied} free={free} name={name} />}
        </Section>
      )}
    </>
  );
}

/** Flags passed, with the speed up to each where the track's flags were measured. */
function Splits({ body }: { body: TimedCanter }) {
  if (body.splits_ms.length === 0) return null;
  const between = legs(body);
  return (
    <Section title={t("watch.splits")}>
      <ul>
        {body.splits_ms.map((ms, n) => <li key={n}>{t("watch.split_line", { n: n + 1, time: faceText(ms) })}{between[n] && `, ${legWords(between[n])}`}</li>)}
        {between.length > 0 && <li>{t("watch.last_leg", { leg: legWords(between.at(-1)!) })}</li>}
      </ul>
      {between.length === 0 && body.flags_m.length > 0 && <p class="quiet">{t("watch.flags_missed", { set: body.flags_m.length, tapped: body.splits_ms.length })}</p>}
    </Section>
  );
}

const legWords = ({ pace }: Leg): string => t("pace.speed", { speed: rounded(pace.speed_mpm), plus_minus: plusMinus(pace) });

// Numbers stand for the lines of the list below; stops and falls are crosses, told apart without colour.
function Drawing({ body, tied }: { body: TimedCanter; tied: Met[] }) {
  if (tied.length === 0) return null;
  const strip = stripOf(body.elapsed_ms, tied.map(offset), body.splits_ms, legs(body));
  return (
    <svg class="canter-way" viewBox={`0 0 ${STRIP_WIDTH} ${STRIP_HEIGHT}`} aria-hidden="true">
      <path class="canter-way__way" d={`M10 46H${STRIP_WIDTH - 10}M10 40v12M${STRIP_WIDTH - 10} 40v12`} />
      {strip.flags.map((x, n) => <path class="canter-way__flag" key={n} d={`M${x} 38v16`} />)}
      {strip.legs.map(({ x, mpm }, n) => <text key={n} x={x} y="68">{rounded(mpm)}</text>)}
      {strip.fences.map(({ x, row }, n) => (
        <g class="canter-way__fence" key={n}>
          <path d={tied[n]!.body.outcome === "clear" ? `M${x - 4} 46l4-8 4 8z` : `M${x - 4} 38l8 8m0-8l-8 8`} />
          <text x={x} y={row === 0 ? 32 : 16}>{n + 1}</text>
        </g>
      ))}
    </svg>
  );
}

interface ChangeProps {
  canter: Canter;
  tied: Met[];
  free: Met[];
  name: (one: Met) => string;
}

function Change({ canter, tied, free, name }: ChangeProps) {
  const most_s = Math.ceil(canter.body.elapsed_ms / 1000);
  const put = (one: Met, canter_id: string | null, canter_offset_ms: number | null): void => {
    void edit(one, { canter_id, canter_offset_ms }).catch(() => undefined); // the frame says why
  };
  // both ids carry the moment they were made: the tap, and the start
  const guess = (one: Met): number => Math.min(canter.body.elapsed_ms, Math.max(0, Math.round(madeAt(one) - madeAt(canter) - 1000 * (canter.body.countdown_s ?? 0))));
  return (
    <details class="more">
      <summary class="more__summary">{t("watch.fences_change")}</summary>
      <div class="form">
        {tied.map((one) => (
          <div key={one.record_id}>
            <Stepper label={name(one)} value={Math.round(offset(one) / 1000)} step={1} least={0} most={most_s} from={0} show={(s) => faceText(1000 * s)} onChange={(s) => put(one, canter.record_id, 1000 * s)} />
            <Button onClick={() => put(one, null, null)} label={t("watch.fence_off_of", { fence: name(one) })}>{t("watch.fence_off")}</Button>
          </div>
        ))}
        {free.map((one) => <Button key={one.record_id} onClick={() => put(one, canter.record_id, guess(one))}>{t("watch.fence_on", { fence: name(one), outcome: t(`outcome.${one.body.outcome}`) })}</Button>)}
      </div>
    </details>
  );
}
