import { useMemo } from "preact/hooks";

import type { Trace } from "../../entries/bodies.ts";
import { type Agreement, agreement } from "../../location/agree.ts";
import { type Point, pointsOf } from "../../location/points.ts";
import { lengthOf, measure, type Measured, type Moved } from "../../location/track.ts";
import { faceText } from "../../pace/clockface.ts";
import { plusMinus, rounded } from "../../pace/phrases.ts";
import type { Pace } from "../../pace/speed.ts";
import { Notice } from "../../parts/Notice.tsx";
import { showDistance } from "../../units/index.ts";
import { decimal } from "../../words/decimal.ts";
import { t } from "../../words/index.ts";
import { SpeedStrip } from "./SpeedStrip.tsx";

interface Props {
  trace: Trace;
  /** The stopwatch's speed of the same canter, where there is one. */
  hand?: Pace;
}

/** What a trace says, and beside the stopwatch whether the two agree. Neither is ever mixed into the other. */
export function MeasuredTrace({ trace, hand }: Props) {
  const points = useMemo(() => pointsOf(trace), [trace]);
  if (trace.started_at_ms === null) return <p>{t("location.drawn", { length: showDistance(rounded(lengthOf(points))) })}</p>;
  return <Timed points={points} left_out={trace.left_out} hand={hand} />;
}

function Timed({ points, left_out, hand }: { points: Point[]; left_out: number; hand: Pace | undefined }) {
  const measured = useMemo(() => measure(points), [points]);
  const { moved } = measured;
  return (
    <>
      {hand && <p>{t("location.hand", speedValues(hand))}</p>}
      {moved ? <p>{t("location.moved", { ...speedValues(moved), ...lengthValues(moved) })}</p> : <p>{t("location.still")}</p>}
      {hand && moved && <Agrees of={agreement(hand, moved)} by={Math.abs(rounded(moved.speed_mpm) - rounded(hand.speed_mpm))} />}
      <SpeedStrip measured={measured} hand_mpm={hand?.speed_mpm ?? null} />
      <LeftOut measured={measured} left_out={left_out} />
    </>
  );
}

function speedValues(speed: { speed_mpm: number; speed_u_mpm: number }) {
  return { speed: rounded(speed.speed_mpm), plus_minus: plusMinus(speed as Pace) };
}

function lengthValues({ distance_m, distance_u_m, moving_s }: Moved) {
  return { distance: showDistance(rounded(distance_m)), u: showDistance(Math.max(1, rounded(distance_u_m))), time: faceText(moving_s * 1000) };
}

function Agrees({ of: { en, agrees }, by }: { of: Agreement; by: number }) {
  const values = { by, en: decimal(Math.abs(en).toFixed(1)) };
  return agrees ? <p>{t("location.agrees", values)}</p> : <Notice tone="attention"><p>{t("location.differs", values)}</p></Notice>;
}

/** Everything that was not counted, so that nothing is quietly missing. */
function LeftOut({ measured: { coarse, jumps, gaps }, left_out }: { measured: Measured; left_out: number }) {
  const lines = [
    gaps.length > 0 && t("location.gaps", { n: gaps.length }), coarse > 0 && t("location.coarse", { n: coarse }),
    jumps > 0 && t("location.jumps", { n: jumps }), left_out > 0 && t("location.left_out", { n: left_out }),
  ].filter((line) => line !== false);
  return lines.length > 0 ? <p class="quiet">{lines.join(" ")}</p> : null;
}
