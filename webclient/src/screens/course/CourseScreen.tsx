import "./course.css";

import { clockWords, type CourseCard } from "../../pace/course.ts";
import { courseSpeeds, levelSpeed, type Rulebook, value } from "../../pace/levels.ts";
import { secondsPer100m } from "../../pace/markers.ts";
import { rounded, tenths } from "../../pace/phrases.ts";
import { Button } from "../../parts/BigButton.tsx";
import { Section } from "../../parts/Card.tsx";
import { Choices } from "../../parts/Choices.tsx";
import { Notice } from "../../parts/Notice.tsx";
import { RulebookOptions } from "../../parts/RulebookOptions.tsx";
import { Screen } from "../../parts/Screen.tsx";
import { Stepper } from "../../parts/Stepper.tsx";
import { TextBox } from "../../parts/TextBox.tsx";
import { useRulebooks } from "../../store/book.ts";
import { t } from "../../words/index.ts";
import { LengthFromFile } from "../trace/LengthFromFile.tsx";
import { type Course, useCourse } from "./useCourse.ts";

/** From a length and a level: optimum time, limit, minute markers, the clock at the fences. To print, too. */
export function CourseScreen() {
  const course = useCourse();
  return (
    <Screen title={t("course.title")} back="/" actions={course.card && <Button onClick={() => window.print()}>{t("course.print")}</Button>}>
      <Entering course={course} />
      {course.card ? <Card course={course} card={course.card} /> : <p class="empty">{course.trouble ? t(`course.trouble_${course.trouble}`) : t("course.empty")}</p>}
    </Screen>
  );
}

function Entering({ course: { draft, change, rulebook, levels, level, unread } }: { course: Course }) {
  const chooseLevel = (id: string | null): void => {
    const next = levels.find((one) => one.id === id);
    change({ level_id: next?.id ?? null, speed_mpm: (next && levelSpeed(next)) ?? draft.speed_mpm });
  };
  return (
    <div class="form course__form">
      <TextBox label={t("course.length")} inputMode="numeric" value={draft.length} most={8} onInput={(length) => change({ length })} />
      <LengthFromFile onLength={(length_m) => change({ length: String(length_m) })} />
      <RulebookChoice rulebook={rulebook} onChoose={(rulebook_id) => change({ rulebook_id, level_id: null })} />
      {levels.length > 0 && (
        <Choices
          optional label={t("course.level")} value={level?.id ?? null} onChoose={chooseLevel}
          choices={levels.map((one) => ({ value: one.id, words: `${one.name} ${courseSpeeds(one)?.join("–").replace(/^(.*)–\1$/, "$1")}` }))}
        />
      )}
      <Stepper
        label={t("course.speed")} value={draft.speed_mpm} step={5} from={400} least={200} most={700}
        show={(speed) => t("watch.target_mpm", { speed })} onChange={(speed_mpm) => change({ speed_mpm })}
      />
      <p class="quiet">{t("course.helper", { seconds: tenths(secondsPer100m(draft.speed_mpm)) })}</p>
      <TextBox
        label={t("course.fences")} hint={t("course.fences_hint")} value={draft.fences} lines={3} most={2000} onInput={(fences) => change({ fences })}
        trouble={unread.length > 0 ? t("course.fences_unread", { lines: unread.join("; ") }) : null}
      />
    </div>
  );
}

function RulebookChoice({ rulebook, onChoose }: { rulebook: Rulebook | undefined; onChoose: (id: string | null) => void }) {
  const all = useRulebooks() as Rulebook[] | undefined;
  if (all?.length === 0) return <p class="quiet">{t("course.no_rulebooks")}</p>;
  return (
    <label class="text-box">
      <span class="text-box__label">{t("course.rulebook")}</span>
      <select value={rulebook?.id ?? ""} onChange={(event) => onChoose(event.currentTarget.value || null)}>
        <option value="">{t("course.own_speed")}</option>
        <RulebookOptions books={all ?? []} />
      </select>
    </label>
  );
}

function Card({ course: { level, rulebook }, card }: { course: Course; card: CourseCard }) {
  const { times } = card;
  const per_second = value(level, "cross_country", "time_penalties_per_second");
  return (
    <section class="card course" aria-live="polite">
      <h2>{level ? level.name : t("course.title")}: {times.length_m} m, {t("watch.target_mpm", { speed: times.speed_mpm })}</h2>
      <dl class="course__times">
        <dt>{t("course.optimum")}</dt><dd class="course__optimum">{clockWords(times.optimum_s)}</dd>
        <dt>{t("course.limit")}</dt><dd>{times.limit_s === null ? t("course.limit_not_stated") : clockWords(times.limit_s)}</dd>
        {times.fastest_s !== null && <><dt>{t("course.too_fast")}</dt><dd>{clockWords(times.fastest_s)}</dd></>}
        {per_second !== null && <><dt>{t("course.over")}</dt><dd>{t("course.over_penalties", { penalties: per_second })}</dd></>}
      </dl>
      <Section title={t("course.markers")}>
        {card.minute_markers.length === 0 && <p class="quiet">{t("course.no_markers")}</p>}
        <ol class="course__markers">{card.minute_markers.map((marker) => <li key={marker.minute}><b>{t("course.marker", { n: marker.minute })}</b> {rounded(marker.distance_m)} m</li>)}</ol>
      </Section>
      {card.fences.length > 0 && <FenceTable card={card} />}
      <Notice tone="attention"><p>{t("course.caution")}</p>{level && rulebook && <p class="quiet">{t("course.source", { rulebook: rulebook.title, edition: rulebook.edition })}</p>}</Notice>
    </section>
  );
}

function FenceTable({ card }: { card: CourseCard }) {
  return (
    <table class="course__fences">
      <caption>{t("course.fence_table")}</caption>
      <thead><tr><th scope="col">{t("course.fence")}</th><th scope="col">{t("course.metres")}</th><th scope="col">{t("course.clock")}</th></tr></thead>
      <tbody>{card.fences.map((fence, n) => <tr key={n}><th scope="row">{fence.label}</th><td>{rounded(fence.distance_m)}</td><td>{clockWords(fence.clock_s)}</td></tr>)}</tbody>
    </table>
  );
}
