import { useState } from "preact/hooks";

import { levelRows } from "../../levels/rows.ts";
import type { Level, Rulebook } from "../../pace/levels.ts";
import { withCorrections } from "../../pace/levels.ts";
import { Section } from "../../parts/Card.tsx";
import { Choices } from "../../parts/Choices.tsx";
import { Notice } from "../../parts/Notice.tsx";
import { Screen } from "../../parts/Screen.tsx";
import { TextBox } from "../../parts/TextBox.tsx";
import { useRecords, useRulebooks } from "../../store/book.ts";
import { say, t } from "../../words/index.ts";
import { ValueRow } from "./ValueRow.tsx";
import "../../style/levels.css";

/** What each level asks: readable and searchable with no signal, each value with its source. */
export function Levels() {
  const [chosen, setChosen] = useState<string | null>(null);
  const horses = useRecords("horse");
  const books = useRulebooks() as unknown as Rulebook[] | undefined;
  const corrections = useRecords("rulebook_value") ?? [];
  if (!books || !horses) return <Screen title={t("level.title")} back="/board">{null}</Screen>;
  const first = horses.find((horse) => horse.body.rulebook_id !== null)?.body.rulebook_id;
  const plain = books.find((book) => book.id === (chosen ?? first)) ?? books[0];
  const book = plain && withCorrections(plain, corrections.map((each) => each.body));
  return (
    <Screen title={t("level.title")} back="/board">
      {!book && <p class="empty">{t("level.none")}</p>}
      {book && <RulebookChoice books={books} book={book} onChoose={setChosen} />}
      {book && <LevelTable book={book} key={book.id} />}
    </Screen>
  );
}

function RulebookChoice({ books, book, onChoose }: { books: Rulebook[]; book: Rulebook; onChoose: (id: string) => void }) {
  return (
    <>
      <label class="text-box">
        <span class="text-box__label">{t("level.rulebook")}</span>
        <select value={book.id} onChange={(event) => onChoose(event.currentTarget.value)}>
          {books.map((each) => <option value={each.id} key={each.id}>{each.title}</option>)}
        </select>
      </label>
      <p class="quiet">{t("level.edition", { edition: book.edition })}</p>
    </>
  );
}

function LevelTable({ book }: { book: Rulebook }) {
  const [levelId, setLevelId] = useState(book.levels[0]?.id ?? "");
  const [wanted, setWanted] = useState("");
  const level = book.levels.find((each) => each.id === levelId);
  return (
    <>
      <Choices
        label={t("level.level")} value={levelId} onChoose={(id) => id && setLevelId(id)}
        choices={book.levels.map(({ id, name }) => ({ value: id, words: name }))}
      />
      <TextBox label={t("level.search")} value={wanted} onInput={setWanted} type="search" />
      <Notice><p>{t("level.check")}</p></Notice>
      {level && <Values book={book} level={level} wanted={wanted} key={level.id} />}
    </>
  );
}

function Values({ book, level, wanted }: { book: Rulebook; level: Level; wanted: string }) {
  const rows = levelRows(level, wanted, (quantity) => say({ key: `level.q.${quantity}` }));
  if (!rows.length) return <p class="empty">{t("level.no_match")}</p>;
  const phases = [...new Set(rows.map((row) => row.phase))];
  return (
    <>
      {phases.map((phase) => (
        <Section title={t(`phase.${phase}`)} key={phase}>
          <div class="values">
            {rows.filter((row) => row.phase === phase).map((row) => <ValueRow row={row} book={book} level={level} key={row.quantity} />)}
          </div>
        </Section>
      ))}
    </>
  );
}
