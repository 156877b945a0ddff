import { Link } from "wouter-preact";

import type { Meeting } from "../../patterns/meetings.ts";
import type { Pattern } from "../../patterns/find.ts";
import { chancePhrase, percent, seenPhrase, wherePhrase } from "../../patterns/phrases.ts";
import { HEIGHT, picture, WIDTH } from "../../patterns/picture.ts";
import { showDay } from "../../words/dates.ts";
import { inside, say, t } from "../../words/index.ts";
import type { HorseHistory } from "./useHistory.ts";

interface Props {
  pattern: Pattern;
  fences: HorseHistory["fences"];
  falls: boolean;
}

/** One pattern: what was seen with its counts, its picture, the attempts behind it, what it does not prove. */
export function PatternCard({ pattern, fences, falls }: Props) {
  const where = whereWords(pattern, fences);
  const troubles = t(falls ? "pattern.stops_and_falls" : "pattern.stops", { n: pattern.on.troubles + pattern.off.troubles });
  return (
    <section class="section pattern">
      <h2 class="section__title">{headOf(pattern, fences)}</h2>
      <p class="pattern__seen">{say(seenPhrase(pattern, where, troubles))}</p>
      <Bars pattern={pattern} name={headOf(pattern, fences)} />
      {pattern.clear_since > 0 && <p>{t("pattern.clear_since", { n: pattern.clear_since })}</p>}
      <details class="more">
        <summary class="more__summary">{t("pattern.behind")}</summary>
        <ul class="rows">{pattern.behind.map((meeting) => <Behind meeting={meeting} fences={fences} key={meeting.attempt_id} />)}</ul>
        {!pattern.of_outing && <p class="quiet">{t("pattern.again")}</p>}
      </details>
      <ProvesNot pattern={pattern} fences={fences} />
    </section>
  );
}

function whatOf({ aspect, side }: Pick<Pattern, "aspect" | "side">, fences: HorseHistory["fences"]): string {
  if (aspect === "fence") return fences.get(side)?.label ?? t("timeline.unknown_fence");
  return aspect === "ask" || aspect === "profile" ? say({ key: `${aspect}.${side}` }) : "";
}

function whereWords(pattern: Pick<Pattern, "aspect" | "side">, fences: HorseHistory["fences"]): string {
  return say(wherePhrase(pattern, whatOf(pattern, fences)));
}

/** The words file calls the paces of a horse gaits, for "pace" is the title of a phase there. */
function headOf({ aspect, side }: Pick<Pattern, "aspect" | "side">, fences: HorseHistory["fences"]): string {
  if (aspect === "opening" || aspect === "after_trouble" || aspect === "late") return t(`pattern.head_${aspect}`);
  if (aspect === "going") return say({ key: `pattern.head_going_${side}` });
  const what = whatOf({ aspect, side }, fences);
  return `${t(`pattern.aspect_${aspect}`)}: ${what || say({ key: `${aspect === "pace" ? "gait" : aspect}.${side}` })}`;
}

/** Two bars, one a side: how many of how many went wrong. */
function Bars({ pattern: { on, off }, name }: { pattern: Pattern; name: string }) {
  const drawn = picture(on, off);
  const told = t("pattern.picture", {
    on_where: name, on_troubles: on.troubles, on_met: on.met, on_percent: percent(on), off_troubles: off.troubles, off_met: off.met, off_percent: percent(off),
  });
  const rows = [{ bar: drawn.on, counts: on, head: name, tone: "on" }, { bar: drawn.off, counts: off, head: t("pattern.off"), tone: "off" }];
  return (
    <figure class="two-bars">
      <svg class="two-bars__drawing" viewBox={`0 0 ${WIDTH} ${HEIGHT}`} role="img" aria-label={told}>
        {rows.map(({ bar, counts, head, tone }) => (
          <g key={tone}>
            <text class="two-bars__head" x={bar.x} y={bar.y - 5}>{head}</text>
            <rect class={`two-bars__bar two-bars__bar--${tone}`} x={bar.x} y={bar.y} width={Math.max(1, bar.width)} height={bar.height} />
            <text class="two-bars__count" x={bar.text_x} y={bar.text_y}>{t("pattern.row_fences", { ...counts })}</text>
          </g>
        ))}
      </svg>
    </figure>
  );
}

function Behind({ meeting: { attempt, outing }, fences }: { meeting: Meeting; fences: HorseHistory["fences"] }) {
  const label = fences.get(attempt.fence_id)?.label ?? t("timeline.unknown_fence");
  const fence = attempt.element === null ? label : t("pattern.element", { fence: label, element: attempt.element });
  return (
    <li class="row">
      <Link class="row__link" href={`/timeline/${attempt.outing_id}`}>
        <span class="row__words">
          <span class="row__title">{t("pattern.attempt", { fence, outcome: inside(t(`outcome.${attempt.outcome}`)) })}</span>
          <span class="row__detail">{showDay(outing.body.date)}</span>
        </span>
      </Link>
    </li>
  );
}

function ProvesNot({ pattern, fences }: { pattern: Pattern; fences: HorseHistory["fences"] }) {
  return (
    <div class="pattern__not">
      <h3>{t("pattern.proves_not")}</h3>
      <ul class="bullets">
        {pattern.shared.map((other) => <li key={other.aspect + other.side}>{t("pattern.shared", { n: other.troubles, other: headOf(other, fences) })}</li>)}
        <li>{t(`pattern.not_${pattern.aspect}`)}</li>
        {pattern.unsaid > 0 && <li>{t("pattern.unsaid", { n: pattern.unsaid })}</li>}
        <li>{say(chancePhrase(pattern.chance.p))}</li>
        <li>{t("pattern.not_cause")}</li>
      </ul>
    </div>
  );
}
