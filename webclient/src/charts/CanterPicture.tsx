import "./charts.css";

import { type Compared, SHOWN, stepSince } from "../pace/comparison.ts";
import { rounded } from "../pace/phrases.ts";
import { HEIGHT, type Mark, picture, type Picture, WIDTH } from "../pace/picture.ts";
import { say, t } from "../words/index.ts";

interface Props {
  compared: Compared[];
  target_mpm: number | null;
}

/** This canter against the last ones over the same stretch: marks with their ±, the target and its band. */
export function CanterPicture({ compared, target_mpm }: Props) {
  const drawn = picture(compared, target_mpm);
  const { step, by_mpm } = stepSince(compared);
  const speeds = compared.map((one) => rounded(one.pace.speed_mpm)).join(", ");
  return (
    <figure class="picture">
      <svg class="picture__drawing" viewBox={`0 0 ${WIDTH} ${HEIGHT}`} role="img" aria-label={t("watch.picture_alt", { n: compared.length, speeds })}>
        <Target target={drawn.target} target_mpm={target_mpm} />
        {drawn.ticks.map((tick) => <Tick key={tick.mpm} {...tick} />)}
        {drawn.marks.map((mark, n) => <CanterMark key={n} mark={mark} words={written(n, compared) ? String(rounded(compared[n]!.pace.speed_mpm)) : ""} />)}
      </svg>
      <figcaption>
        {step === "first" ? t("watch.picture_first") : say({ key: `watch.step_${step}`, values: { by: Math.abs(rounded(by_mpm)) } })}
        {target_mpm !== null && ` ${t("watch.picture_band")}`}
      </figcaption>
    </figure>
  );
}

// Under every mark while there is room, else under each third, counted from the newest.
function written(n: number, compared: Compared[]): boolean {
  return compared.length <= SHOWN || (compared.length - 1 - n) % 3 === 0;
}

function Target({ target, target_mpm }: { target: Picture["target"]; target_mpm: number | null }) {
  if (target === null || target_mpm === null) return null;
  return (
    <g class="picture__target">
      <rect class="picture__band" x="38" width={WIDTH - 38} y={target.band_top} height={target.band_height} />
      <line x1="38" x2={WIDTH} y1={target.y} y2={target.y} />
      <text x={WIDTH - 2} y="12" text-anchor="end">{t("watch.picture_target", { target: rounded(target_mpm) })}</text>
    </g>
  );
}

function Tick({ y, mpm }: { y: number; mpm: number }) {
  return (
    <g class="picture__tick">
      <line x1="34" x2="38" y1={y} y2={y} />
      <text x="31" y={y + 4} text-anchor="end">{mpm}</text>
    </g>
  );
}

// The current canter is a filled diamond with its number, the others are rings: told apart without colour.
function CanterMark({ mark, words }: { mark: Mark; words: string }) {
  const { x, y, low_y, high_y, target_y, current } = mark;
  return (
    <g class={current ? "picture__mark picture__mark--now" : "picture__mark"}>
      {target_y !== null && <line class="picture__own" x1={x - 9} x2={x + 9} y1={target_y} y2={target_y} />}
      <line x1={x} x2={x} y1={low_y} y2={high_y} />
      <line x1={x - 4} x2={x + 4} y1={low_y} y2={low_y} />
      <line x1={x - 4} x2={x + 4} y1={high_y} y2={high_y} />
      {current ? <path d={`M${x} ${y - 7}l7 7-7 7-7-7z`} /> : <circle cx={x} cy={y} r="4.5" />}
      <text x={x} y={HEIGHT - 8} text-anchor="middle">{words}</text>
    </g>
  );
}
