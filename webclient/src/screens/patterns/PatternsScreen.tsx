import "../../style/patterns.css";

import { useMemo } from "preact/hooks";

import { civilDate } from "../../entries/entry.ts";
import { dayBefore, findPatterns, type Found } from "../../patterns/find.ts";
import { RULE } from "../../patterns/rule.ts";
import { Section } from "../../parts/Card.tsx";
import { NotHere } from "../../parts/NotHere.tsx";
import { Notice } from "../../parts/Notice.tsx";
import { Screen } from "../../parts/Screen.tsx";
import { useRecord, useWhetherHere } from "../../store/book.ts";
import { t } from "../../words/index.ts";
import { PatternCard } from "./PatternCard.tsx";
import { type HorseHistory, useHistory } from "./useHistory.ts";

/** What the stops and falls of one horse have in common, where there is enough to say so. */
export function PatternsScreen({ params: { horseId } }: { params: { horseId: string } }) {
  const today = civilDate(new Date());
  const whether = useWhetherHere("horse", horseId);
  const horse = useRecord("horse", horseId);
  const history = useHistory(horseId, dayBefore(today, RULE.window_days));
  if (whether === "missing") return <NotHere />;
  if (!horse || !history) return <Screen title={t("pattern.title")} back="/board">{null}</Screen>;
  return (
    <Screen title={t("pattern.title_of", { horse: horse.body.name })} back="/board">
      <Shown history={history} today={today} />
    </Screen>
  );
}

function Shown({ history, today }: { history: HorseHistory; today: string }) {
  const found = useMemo(() => findPatterns(history, today), [history, today]);
  return (
    <>
      <p>{t("pattern.intro")}</p>
      {found.meetings > 0 && <p class="quiet">{t("pattern.counted", { n: found.troubles, met: found.meetings, outings: t("pattern.outings", { n: found.outings }) })}</p>}
      {found.patterns.length > 0 && <Notice tone="attention"><p>{t("pattern.pain")}</p></Notice>}
      {found.patterns.map((pattern) => <PatternCard pattern={pattern} fences={history.fences} falls={found.falls} key={pattern.aspect + pattern.side} />)}
      {found.patterns.length === 0 && <NothingSaid found={found} />}
      <LookedAt found={found} />
    </>
  );
}

function NothingSaid({ found: { looked } }: { found: Found }) {
  const which = looked.some((each) => each.looked === "looked") ? "nothing" : "none_yet";
  return <Notice title={t(`pattern.${which}_title`)}><p>{t(`pattern.${which}`)}</p></Notice>;
}

/** What was looked at and what not, and by which rule something is said. */
function LookedAt({ found }: { found: Found }) {
  const state = { looked: t("pattern.looked"), too_little: t("pattern.too_little"), unsaid: t("pattern.unsaid_state") };
  return (
    <Section title={t("pattern.looked_title")}>
      <dl class="facts card">
        {found.looked.map(({ aspect, looked }) => <><dt>{t(`pattern.aspect_${aspect}`)}</dt><dd>{state[looked]}</dd></>)}
      </dl>
      <p class="quiet">{t("pattern.rule")}</p>
      <p class="quiet">{t("pattern.source")}</p>
    </Section>
  );
}
