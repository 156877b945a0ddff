import { useState } from "preact/hooks";

import { spreadsheetManner, tableText } from "../../copies/csv.ts";
import { handOver } from "../../copies/handOver.ts";
import { PROFILES, type Profile } from "../../entries/bodies.ts";
import type { Brought } from "../../imports/bring.ts";
import { takeIn } from "../../imports/takeIn.ts";
import { Button } from "../../parts/BigButton.tsx";
import { Choices } from "../../parts/Choices.tsx";
import { Notice } from "../../parts/Notice.tsx";
import { toast } from "../../parts/toast.ts";
import { TextBox } from "../../parts/TextBox.tsx";
import { here } from "../../store/place.ts";
import { type Key, t } from "../../words/index.ts";
import { language } from "../../words/language.ts";
import { type TableView, useTable } from "./useTable.ts";

const MOST_SHOWN = 20;

interface Props {
  /** Headings and rows, as they came or as mended here. */
  rows: string[][];
  change: (rows: string[][]) => void;
}

/** A table before it is taken in: what it would make, what has to be said first, and each cell that needs mending. */
export function TablePreview({ rows: brought, change }: Props) {
  const [make, setMake] = useState(false);
  const [profile, setProfile] = useState<Profile | null>(null);
  const [dayFirst, setDayFirst] = useState<boolean | null>(null);
  const view = useTable(brought, dayFirst, { make, profile });
  if (!view) return null;
  const rows = view.table;
  const stay = rows.filter((_, at) => at === 0 || !view.brought.idOf.has(at));
  const take = async () => {
    const added = await takeIn(here(), view.brought.entries).catch(() => null);
    if (added === null) return;
    toast(t("import.taken", { n: added && view.fresh }));
    change(stay);
  };
  return (
    <section class="card form" aria-label={t("import.table")}>
      <p><strong>{t(`import.table_${view.sheet.kind}`)}</strong></p>
      <p role="status">{t("import.counts", { rows: rows.length - 1, fresh: view.fresh, already: view.already, bad: view.bad.length, waiting: stay.length - 1 - view.bad.length })}</p>
      {view.sheet.unused.length > 0 && <p class="quiet">{t("import.unused", { names: view.sheet.unused.join(", ") })}</p>}
      {view.fresh > 0 && view.alike > 0 && <Notice tone="attention"><p>{t("import.alike", { n: view.alike })}</p></Notice>}
      {view.sheet.dayFirst === null && (
        <Choices
          label={t("import.day_order")} value={dayFirst === null ? null : dayFirst ? "day" : "month"} onChoose={(chosen) => setDayFirst(chosen === "day")}
          choices={[{ value: "day", words: t("import.day_first") }, { value: "month", words: t("import.month_first") }]}
        />
      )}
      <Missing brought={view.brought} make={make} setMake={setMake} profile={profile} setProfile={setProfile} />
      <Mending view={view} rows={rows} change={change} />
      <Preview view={view} />
      <div class="buttons">
        {view.fresh > 0 && <Button tone="main" onClick={() => void take()}>{t("import.take_rows", { n: view.fresh })}</Button>}
        {stay.length > 1 && <Button onClick={() => void handOver("fieldtally-rows-left.csv", [tableText(stay, spreadsheetManner(language.value))], "text/csv")}>{t("import.save_left", { n: stay.length - 1 })}</Button>}
        <Button tone="quiet" onClick={() => change([])}>{t("import.discard")}</Button>
      </div>
    </section>
  );
}

interface MissingProps {
  brought: Brought;
  make: boolean;
  setMake: (make: boolean) => void;
  profile: Profile | null;
  setProfile: (profile: Profile) => void;
}

/** Names that are not in the logbook: made only when the person says so. */
function Missing({ brought: { missing, unbuilt }, make, setMake, profile, setProfile }: MissingProps) {
  const kinds = (["horse", "field", "fence"] as const).filter((kind) => missing[kind].length);
  if (!kinds.length) return null;
  return (
    <Notice tone="attention" title={t("import.missing")}>
      {kinds.map((kind) => <p key={kind}>{t(`import.missing_${kind}`, { names: missing[kind].join(", ") })}</p>)}
      <label class="tick"><input type="checkbox" checked={make} onChange={() => setMake(!make)} /><span>{t("import.make")}</span></label>
      {(unbuilt || profile) && (
        <label class="text-box">
          <span class="text-box__label">{t("import.profile")}</span>
          <select value={profile ?? ""} onChange={(event) => setProfile(event.currentTarget.value as Profile)}>
            <option value="" disabled>…</option>
            {PROFILES.map((each) => <option value={each} key={each}>{t(`profile.${each}`)}</option>)}
          </select>
        </label>
      )}
    </Notice>
  );
}

/** Each cell that stands in the way, to be mended where it is. */
function Mending({ view: { bad, sheet }, rows, change }: Props & { view: TableView }) {
  const mend = (at: number, column: string, text: string) => {
    const place = sheet.places.get(column) ?? rows[0]!.length;
    change(rows.map((row, index) => (index === at ? Object.assign([...row], { [place]: text }) : index || row[place] !== undefined ? row : [...row, column])));
  };
  return (
    <>
      {bad.slice(0, MOST_SHOWN).flatMap(({ at, cells, troubles }) => troubles.map(({ column, key, values }) => (
        <Mend
          key={`${at} ${column}`} label={t("import.cell", { row: at + 1, column: rows[0]![sheet.places.get(column) ?? -1] ?? column })} given={cells[column] ?? ""}
          trouble={t(`import.bad_${key}` as Key, values)} onDone={(text) => mend(at, column, text)}
        />
      )))}
      {bad.length > MOST_SHOWN && <p>{t("import.more_bad", { n: bad.length - MOST_SHOWN })}</p>}
    </>
  );
}

/** Read again when it is left: half a number may be right as well. */
function Mend({ label, given, trouble, onDone }: { label: string; given: string; trouble: string; onDone: (text: string) => void }) {
  const [text, setText] = useState(given);
  return <div onFocusOut={() => text !== given && onDone(text)}><TextBox label={label} value={text} onInput={setText} trouble={trouble} /></div>;
}

function Preview({ view: { rows, sheet, stateOf } }: { view: TableView }) {
  const columns = [...sheet.places.keys()].filter((column) => column !== "record_id");
  return (
    <div class="sheet" role="region" aria-label={t("import.preview")} tabIndex={0}>
      <table>
        <thead><tr><th scope="col">{t("import.row")}</th><th scope="col">{t("import.state")}</th>{columns.map((column) => <th scope="col" key={column}>{column}</th>)}</tr></thead>
        <tbody>
          {rows.slice(0, MOST_SHOWN).map((row) => (
            <tr key={row.at}><th scope="row">{row.at + 1}</th><td>{t(`import.is_${stateOf(row)}`)}</td>{columns.map((column) => <td key={column}>{row.cells[column]}</td>)}</tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
