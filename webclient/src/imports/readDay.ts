// A day as people write it: 2025-04-03, 3.4.2025, 3/4/25. Only what holds two slashes can be read two ways.

const ISO = /^(\d{4})-(\d{1,2})-(\d{1,2})/;
const DOTS = /^(\d{1,2})\.\s?(\d{1,2})\.\s?(\d{2}|\d{4})$/;
const SLASHES = /^(\d{1,2})\/(\d{1,2})\/(\d{2}|\d{4})$/;

/** `YYYY-MM-DD`, or the key of what is wrong. */
export function readDay(text: string, dayFirst: boolean | null, today: string): string | { key: string; values: object } {
  const wrong = (key: string) => ({ key, values: { text: text.slice(0, 40) } });
  const [year, month, day] = parts(text, dayFirst ?? true);
  if (SLASHES.test(text) && dayFirst === null) return wrong("date_order");
  const iso = `${year}-${String(month).padStart(2, "0")}-${String(day).padStart(2, "0")}`;
  const made = new Date(`${iso}T00:00:00Z`);
  if (!year || Number.isNaN(made.getTime()) || made.getUTCDate() !== day || iso < "1990") return wrong("date");
  return iso > today ? wrong("future") : iso;
}

function parts(text: string, dayFirst: boolean): number[] {
  const iso = ISO.exec(text)?.slice(1).map(Number);
  if (iso) return iso;
  const [one, other, year] = (DOTS.exec(text) ?? SLASHES.exec(text))?.slice(1).map(Number) ?? [];
  const full = year !== undefined && year < 100 ? 2000 + year : year;
  return (DOTS.test(text) || dayFirst ? [full, other, one] : [full, one, other]) as number[];
}

/** What the days of a table say about the order of day and month; null: they can be read both ways. */
export function orderOfDays(days: readonly string[]): boolean | null {
  const slashed = days.map((day) => SLASHES.exec(day.trim())).filter((found) => found !== null);
  if (!slashed.length || slashed.some(([, first]) => Number(first) > 12)) return true;
  return slashed.some(([, , second]) => Number(second) > 12) ? false : null;
}
