import { Link } from "wouter-preact";

import { Button } from "../../parts/BigButton.tsx";
import { Rows, Section } from "../../parts/Card.tsx";
import { Icon } from "../../parts/Icon.tsx";
import { NotHere } from "../../parts/NotHere.tsx";
import { Screen } from "../../parts/Screen.tsx";
import { toast } from "../../parts/toast.ts";
import { mannerOf } from "../../recording/manner.ts";
import { type Presented, presentations } from "../../recording/timeline.ts";
import { putBack, useRole } from "../../store/book.ts";
import { showClock } from "../../words/dates.ts";
import { t } from "../../words/index.ts";
import "../../style/recording.css";
import { useBin } from "./bin.ts";
import { attemptName, mannerWords } from "./names.ts";
import { show, taps } from "./recorder.ts";
import { type OutingView, type SeenAttempt, useOuting } from "./useOuting.ts";

/** Today's attempts in order, newest first, each to be opened and changed; and what was taken back. */
export function AttemptList({ params }: { params: { id: string } }) {
  const view = useOuting(params.id);
  if (view === "missing") return <NotHere />;
  if (view === "loading") return <p class="screen quiet">{t("outing.loading")}</p>;
  return (
    <Screen title={t("outing.timeline")} back={`/outing/${params.id}`}>
      <Rows empty={t("outing.nothing_yet")}>
        {presentations(view.attempts).reverse().map((line) => <Line view={view} line={line} key={line.attempts[0]!.record_id} />)}
      </Rows>
      <Bin view={view} />
    </Screen>
  );
}

function Line({ view, line }: { view: OutingView; line: Presented<SeenAttempt> }) {
  return <>{line.attempts.map((attempt, at) => <One view={view} attempt={attempt} at_ms={at ? null : line.at_ms} key={attempt.record_id} />)}</>;
}

interface OneProps {
  view: OutingView;
  attempt: SeenAttempt;
  /** Said once for all elements of one presentation. */
  at_ms: number | null;
}

function One({ view, attempt, at_ms }: OneProps) {
  const fence = view.fences.find((each) => each.record_id === attempt.body.fence_id);
  const state = taps.value.find((tap) => tap.record_id === attempt.record_id)?.state;
  const details = [mannerWords(mannerOf(attempt.body)), attempt.body.note].filter(Boolean).join(" · ");
  return (
    <li class={at_ms === null ? "row row--together" : "row"}>
      <Link class="row__link" href={`/attempt/${attempt.record_id}`}>
        <span class="row__end attempt-row__time">{at_ms !== null && showClock(at_ms)}</span>
        <span class="row__words">
          <span class="row__title">{attemptName(attempt.body, fence?.body)}</span>
          <span class="row__detail">{details}</span>
          {state === "not_saved" && <span class="text-box__trouble">{t("outing.not_saved")}</span>}
        </span>
        <Icon name="forward" />
      </Link>
    </li>
  );
}

function Bin({ view }: { view: OutingView }) {
  const gone = useBin(view.outing);
  const mayWrite = useRole() !== "reader";
  if (!gone?.length) return null;
  const restore = (record_id: string) => putBack(record_id).then(() => show(record_id), () => toast(t("attempt.not_changed")));
  return (
    <Section title={t("outing.bin")}>
      <p class="quiet">{t("outing.bin_words")}</p>
      <ul class="rows">
        {gone.map(({ record_id, body }) => (
          <li class="row history__line" key={record_id}>
            <span class="row__words"><span class="row__title">{attemptName(body, view.fences.find((each) => each.record_id === body.fence_id)?.body)}</span></span>
            {mayWrite && <Button onClick={() => void restore(record_id)}>{t("attempt.put_back")}</Button>}
          </li>
        ))}
      </ul>
    </Section>
  );
}
