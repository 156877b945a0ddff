import "./import.css";

import { useState } from "preact/hooks";

import { columnsOf, TABLE_KINDS, type TableKind } from "../../copies/columns.ts";
import { PLAIN, readTable, spreadsheetManner, tableText } from "../../copies/csv.ts";
import { exportAll } from "../../copies/exportAll.ts";
import { exportTable } from "../../copies/exportTable.ts";
import { handOver } from "../../copies/handOver.ts";
import { kindOfTable } from "../../imports/columnNames.ts";
import { type CopiedBook, type CopyTrouble, readCopy } from "../../imports/readCopy.ts";
import { Button } from "../../parts/BigButton.tsx";
import { Section } from "../../parts/Card.tsx";
import { Notice } from "../../parts/Notice.tsx";
import { Screen } from "../../parts/Screen.tsx";
import { useDraft, useRole } from "../../store/book.ts";
import { t } from "../../words/index.ts";
import { language } from "../../words/language.ts";
import { CopyPreview } from "./CopyPreview.tsx";
import { TablePreview } from "./TablePreview.tsx";

type Trouble = CopyTrouble | "torn";

/** Taking everything out and bringing it, or a table of the past, in again. All of it works with no signal. */
export function ImportScreen() {
  return (
    <Screen title={t("import.title")} back="/settings">
      {useRole() !== "reader" && <BringIn />}
      <TakeOut />
    </Screen>
  );
}

function BringIn() {
  const [books, setBooks] = useState<CopiedBook[]>([]);
  const [trouble, setTrouble] = useState<Trouble | null>(null);
  const [kept, keep, clear] = useDraft("import table");
  const rows = kept ? (JSON.parse(kept) as string[][]) : null;
  // the same file, mended and chosen again, must be read again: the box is emptied each time
  const read = async (file: File) => {
    const found = open(await file.text());
    setTrouble(typeof found === "string" ? found : null);
    if (typeof found === "string") return;
    setBooks("books" in found ? found.books : []);
    if ("rows" in found) keep(JSON.stringify(found.rows));
  };
  return (
    <Section title={t("import.in")}>
      <label class="text-box">
        <span class="text-box__label">{t("import.file")}</span>
        <input class="text-box__input" type="file" accept=".json,.csv,.tsv,.txt" onChange={({ currentTarget }) => currentTarget.files?.[0] && void read(currentTarget.files[0]).finally(() => (currentTarget.value = ""))} />
        <span class="text-box__hint">{t("import.file_hint")}</span>
      </label>
      {trouble && <Notice tone="stop" urgent><p>{t(`import.${trouble}`)}</p></Notice>}
      {books.map((book) => <CopyPreview book={book} key={book.id} />)}
      {rows && <TablePreview rows={rows} change={(next) => (next.length > 1 ? keep(JSON.stringify(next)) : clear())} />}
      <Templates />
    </Section>
  );
}

function open(text: string): { books: CopiedBook[] } | { rows: string[][] } | Trouble {
  if (/^\s*[{[]/.test(text)) {
    const books = readCopy(text);
    return typeof books === "string" ? books : { books };
  }
  const rows = readTable(text);
  if (!rows) return "torn";
  return rows.length > 1 && kindOfTable(rows[0]!) ? { rows } : "not_ours";
}

function Templates() {
  const give = (kind: TableKind) => handOver(`fieldtally-${kind}.csv`, [tableText([columnsOf(kind)], spreadsheetManner(language.value))], "text/csv");
  return (
    <details class="more">
      <summary class="more__summary">{t("import.templates")}</summary>
      <p>{t("import.template_words")}</p>
      <div class="buttons">{TABLE_KINDS.filter((kind) => kind !== "timed_canter").map((kind) => <Button key={kind} onClick={() => void give(kind)}>{t(`import.table_${kind}`)}</Button>)}</div>
    </details>
  );
}

function TakeOut() {
  return (
    <Section title={t("import.out")}>
      <p>{t("settings.export_words")}</p>
      <div class="buttons"><Button onClick={() => void exportAll()}>{t("settings.export")}</Button></div>
      <p>{t("import.tables_words")}</p>
      {TABLE_KINDS.map((kind) => (
        <div class="take-out" role="group" aria-label={t(`import.table_${kind}`)} key={kind}>
          <strong>{t(`import.table_${kind}`)}</strong>
          <Button onClick={() => void exportTable(kind, spreadsheetManner(language.value))}>{t("import.for_spreadsheet")}</Button>
          <Button onClick={() => void exportTable(kind, PLAIN)}>{t("import.plain")}</Button>
        </div>
      ))}
    </Section>
  );
}
