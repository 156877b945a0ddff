// Tables as text by RFC 4180, written so that no spreadsheet runs a cell, and read as people send them.
// Twin of server/fieldtally/reports/table.py: both run fixtures/contract/csv.json.

/** How a table is written: `,` and `.` for programs, or what a spreadsheet of this language expects. */
export interface Manner {
  separator: string;
  decimal: string;
  /** A byte order mark in front, without which some spreadsheets garble accents. */
  mark: boolean;
}

export const PLAIN: Manner = { separator: ",", decimal: ".", mark: false };

/** For spreadsheets: where the decimal sign is a comma, columns are parted by semicolons. */
export function spreadsheetManner(language: string): Manner {
  const decimal = new Intl.NumberFormat(language).format(1.5).replace(/\d/g, "");
  return { separator: decimal === "," ? ";" : ",", decimal, mark: true };
}

const BYTE_ORDER_MARK = "\ufeff";
const RUNS = /^'*[=+\-@\t\r\n＝＋－＠]/;

/** A text that would run as a formula (OWASP, CSV Injection) gets an apostrophe; so does one that looks as if
 * it had got one, so that reading gives back exactly what was written. */
export function harmless(text: string): string {
  return RUNS.test(text) ? `'${text}` : text;
}

export function unharmed(cell: string): string {
  return cell[0] === "'" && RUNS.test(cell) ? cell.slice(1) : cell;
}

export function cell(value: unknown, decimal = "."): string {
  if (value === null || value === undefined) return "";
  if (typeof value === "boolean") return value ? "yes" : "no";
  if (typeof value === "number") return String(Number(value.toPrecision(15))).replace(".", decimal);
  return harmless(String(value));
}

export function line(values: readonly unknown[], { separator, decimal }: Manner = PLAIN): string {
  const quoted = (text: string) => (text.includes(separator) || /["\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text);
  return `${values.map((value) => quoted(cell(value, decimal))).join(separator)}\r\n`;
}

export function tableText(rows: readonly (readonly unknown[])[], manner: Manner): string {
  return (manner.mark ? BYTE_ORDER_MARK : "") + rows.map((row) => line(row, manner)).join("");
}

/** The rows of a table, whatever its separator, mark or line ends; rows without any text are left out. Null:
 * a quote was never closed. */
export function readTable(text: string): string[][] | null {
  const plain = text.replace(/^\ufeff/, "").replace(/^sep=.\r?\n/i, "");
  const part = separatorOf(plain.match(/^(?:"(?:[^"]|"")*"|[^"\r\n])*/)![0]);
  const rows: string[][] = [[]];
  const piece = new RegExp(`(?:"((?:[^"]|"")*)"|([^"${part}\\r\\n][^${part}\\r\\n]*)?)(${part}|\\r\\n|\\n|\\r|$)`, "y");
  while (piece.lastIndex < plain.length) {
    const [, quoted, bare = "", end] = piece.exec(plain) ?? [];
    if (end === undefined) return null;
    rows.at(-1)!.push(unharmed(quoted?.replaceAll('""', '"') ?? bare));
    if (/[\r\n]/.test(end)) rows.push([]);
    else if (end !== "" && piece.lastIndex === plain.length) rows.at(-1)!.push("");
  }
  return rows.filter((row) => row.some((each) => each.trim() !== ""));
}

function separatorOf(header: string): string {
  const bare = header.replace(/"(?:[^"]|"")*"/g, "");
  const count = (sign: string) => bare.split(sign).length;
  return [",", ";", "\t"].sort((one, other) => count(other) - count(one))[0]!;
}
