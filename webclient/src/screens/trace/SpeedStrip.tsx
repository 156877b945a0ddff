import "../../charts/charts.css";
import "./trace.css";

import { FOOT, HEIGHT, LEFT, stripOf, WIDTH } from "../../location/strip.ts";
import type { Measured } from "../../location/track.ts";
import { faceText } from "../../pace/clockface.ts";
import { rounded } from "../../pace/phrases.ts";
import { t } from "../../words/index.ts";

/** Speed over time by the phone's location; the stopwatch's average as a dashed line, gaps hatched and named. */
export function SpeedStrip({ measured, hand_mpm }: { measured: Measured; hand_mpm: number | null }) {
  if (measured.stretches.length === 0) return null;
  const strip = stripOf(measured, hand_mpm);
  const fastest = rounded(60 * Math.max(...measured.stretches.flat().map((moment) => moment.speed_mps)));
  return (
    <figure class="picture">
      <svg class="picture__drawing" viewBox={`0 0 ${WIDTH} ${HEIGHT}`} role="img" aria-label={t("location.strip_alt", { fastest, time: faceText(strip.seconds * 1000), n: strip.gaps.length })}>
        {strip.ticks.map(({ y, mpm }) => (
          <g class="picture__tick" key={mpm}><line x1={LEFT - 4} x2={LEFT} y1={y} y2={y} /><text x={LEFT - 7} y={y + 4} text-anchor="end">{mpm}</text></g>
        ))}
        {strip.gaps.map(({ x, width, seconds }) => (
          <g class="strip-gap" key={x}>
            <rect x={x} width={width} y="10" height={FOOT - 10} />
            {width > 44 && <text x={x + width / 2} y={FOOT / 2} text-anchor="middle">{t("location.gap", { time: faceText(seconds * 1000) })}</text>}
          </g>
        ))}
        {hand_mpm !== null && <g class="picture__target"><line x1={LEFT} x2={WIDTH} y1={strip.y(hand_mpm)} y2={strip.y(hand_mpm)} /></g>}
        {strip.lines.map((points, n) => <polyline class="strip-line" points={points} key={n} />)}
        <line x1={LEFT} x2={WIDTH} y1={FOOT} y2={FOOT} />
        <text x={LEFT} y={HEIGHT - 6}>0</text>
        <text x={WIDTH - 2} y={HEIGHT - 6} text-anchor="end">{faceText(strip.seconds * 1000)}</text>
      </svg>
      <figcaption>{t("location.strip")}{hand_mpm !== null && ` ${t("location.strip_hand")}`}</figcaption>
    </figure>
  );
}
