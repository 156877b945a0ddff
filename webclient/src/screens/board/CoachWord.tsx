import { useState } from "preact/hooks";

import type { Standing } from "../../board/standing.ts";
import { newestWord } from "../../board/words.ts";
import { Button } from "../../parts/BigButton.tsx";
import { Section } from "../../parts/Card.tsx";
import { Icon, type IconName } from "../../parts/Icon.tsx";
import type { Decision } from "../../entries/bodies.ts";
import { civilDate } from "../../entries/entry.ts";
import { useRecords, useRole, type SavedRecord } from "../../store/book.ts";
import { showDay } from "../../words/dates.ts";
import { t } from "../../words/index.ts";
import { WordForm } from "./WordForm.tsx";

const MARKS: Record<Decision, IconName> = { go: "tick", not_yet: "attention", hold: "stop" };

/** The coach's decision on this level; the coach can give or change it here. */
export function CoachWord({ standing }: { standing: Standing }) {
  const [writing, setWriting] = useState(false);
  const role = useRole();
  const words = useRecords("word", { horse_id: standing.horse_id });
  const word = newestWord(words ?? [], standing.rulebook_id, standing.level_id);
  return (
    <Section title={t("board.word")}>
      {word ? <Told word={word} /> : <p class="empty">{t("board.no_word")}</p>}
      {role === "coach" && !writing && (
        <Button tone="main" onClick={() => setWriting(true)}>{t(word ? "board.word_change" : "board.word_give")}</Button>
      )}
      {writing && <WordForm standing={standing} done={() => setWriting(false)} />}
    </Section>
  );
}

function Told({ word }: { word: SavedRecord<"word"> }) {
  const { decision, reason, expires_on } = word.body;
  const lapsed = expires_on !== null && expires_on < civilDate(new Date());
  return (
    <div class="card word">
      <p class={`word__decision word__decision--${decision}`}><Icon name={MARKS[decision]} />{t(`decision.${decision}`)}</p>
      <p class="said__text">{reason}</p>
      <p class="quiet">
        {t("board.word_by", { name: word.author_name ?? "", day: showDay(word.local_date) })}{expires_on && ". "}
        {expires_on && t(lapsed ? "board.word_lapsed" : "board.word_until", { day: showDay(expires_on) })}
      </p>
    </div>
  );
}
