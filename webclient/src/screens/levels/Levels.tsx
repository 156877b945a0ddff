import { useState } from "preact/hooks";

import { newestLast, troubleWith } from "../../levels/correction.ts";
import { inOrder, type LevelRow, levelRows } from "../../levels/rows.ts";
import type { Level, Rulebook } from "../../pace/levels.ts";
import { withCorrections } from "../../pace/levels.ts";
import { Button } from "../../parts/BigButton.tsx";
import { Section } from "../../parts/Card.tsx";
import { Choices } from "../../parts/Choices.tsx";
import { Notice } from "../../parts/Notice.tsx";
import { RulebookOptions } from "../../parts/RulebookOptions.tsx";
import { Screen } from "../../parts/Screen.tsx";
import { TextBox } from "../../parts/TextBox.tsx";
import { type SavedRecord, takeBack, useRecords, useRulebooks } from "../../store/book.ts";
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
  const { current, older } = inOrder(books);
  const plain = books.find((book) => book.id === (chosen ?? first)) ?? [...current, ...older][0];
  const book = plain && withCorrections(plain, newestLast(corrections));
  return (
    <Screen title={t("level.title")} back="/board">
      {!book && <p class="empty">{t("level.none")}</p>}
      {book && <RulebookChoice books={books} book={book} onChoose={setChosen} />}
      {book && <InVain book={book} corrections={corrections} />}
      {book && <LevelTable book={book} key={book.id} />}
    </Screen>
  );
}

/** Corrections of this rulebook that cannot apply: said, so that nobody trusts a value that did not change. */
function InVain({ book, corrections }: { book: Rulebook; corrections: SavedRecord<"rulebook_value">[] }) {
  const lost = corrections.flatMap((each) => {
    const trouble = each.body.rulebook_id === book.id && troubleWith(book, each.body);
    return trouble ? [{ ...each, trouble }] : [];
  });
  return (
    <>
      {lost.map(({ record_id, body, trouble }) => (
        <Notice tone="attention" title={t("level.in_vain")} actions={<Button onClick={() => void takeBack(record_id)}>{t("level.take_back")}</Button>} key={record_id}>
          <p>{nameOf(body.quantity)}, {body.level_id}: {body.value ?? t("level.not_stated")}. {t(`level.trouble_${trouble}`)}</p>
        </Notice>
      ))}
    </>
  );
}

function RulebookChoice({ books, book, onChoose }: { books: Rulebook[]; book: Rulebook; onChoose: (id: string) => void }) {
  return (
    <>
      <label class="text-box">
        <span class="text-box__label">{t("level.rulebook")}</span>
        <select value={book.id} onChange={(event) => onChoose(event.currentTarget.value)}>
          <RulebookOptions books={books} />
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
  const rows = levelRows(book, level, wanted, nameOf);
  const stated = rows.filter((row) => row.stated);
  const others = rows.filter((row) => !row.stated);
  const list = (some: LevelRow[]) => <div class="values">{some.map((row) => <ValueRow row={row} book={book} level={level} key={row.phase + row.quantity} />)}</div>;
  return (
    <>
      {stated.length === 0 && <p class="empty">{t("level.no_match")}</p>}
      {[...new Set(stated.map((row) => row.phase))].map((phase) => (
        <Section title={t(`phase.${phase}`)} key={phase}>{list(stated.filter((row) => row.phase === phase))}</Section>
      ))}
      {others.length > 0 && (
        <details open={wanted !== ""}>
          <summary class="more__summary">{t("level.others", { n: others.length })}</summary>
          {list(others)}
        </details>
      )}
    </>
  );
}

const nameOf = (quantity: string): string => say({ key: `level.q.${quantity}` });
