// A flatwork test's percentage and penalties from its marks: the twin of
// server/fieldtally/trade/dressage_score.py. Arithmetic in hundredths, so that halves round as on paper.

import { aboveZero, BadInput, notBelowZero } from "./badInput.ts";

export interface Marked {
  mark: number;
  coefficient: number;
}

/** What a rulebook says at a level, under its own names; null where it does not. */
export interface DressageRules {
  error_first_marks: number | null;
  error_second_marks: number | null;
  errors_that_eliminate: number | null;
  percent_decimals: number | null;
  penalties_decimals: number | null;
  penalty_coefficient: number | null;
}

export const NO_DRESSAGE_RULES: DressageRules = {
  error_first_marks: null,
  error_second_marks: null,
  errors_that_eliminate: null,
  percent_decimals: null,
  penalties_decimals: null,
  penalty_coefficient: null,
};

export interface Sheet {
  marks: number;
  maximum: number;
}

export interface DressageScore {
  sheet: Sheet;
  percent: number | null;
  penalties: number | null;
  eliminated: boolean;
  /** Errors were made and the rulebook's price for them is not known: the percentage is before errors. */
  errors_not_counted: boolean;
}

const HIGHEST_MARK = 10;
const hundredths = (value: number): number => Math.round(value * 100);

function checkedMark({ mark, coefficient }: Marked, index: number): void {
  aboveZero(`marks[${index}].coefficient`, coefficient);
  if (notBelowZero(`marks[${index}].mark`, mark) > HIGHEST_MARK) throw new BadInput(`marks[${index}].mark`, "too_big");
}

/** The sum of marks times coefficients, and the most it could have been. */
export function sheetOf(marks: Marked[]): Sheet {
  if (marks.length === 0) throw new BadInput("marks", "not_above_zero");
  marks.forEach(checkedMark);
  const total = marks.reduce((sum, one) => sum + hundredths(one.mark) * hundredths(one.coefficient), 0);
  const weight = marks.reduce((sum, one) => sum + hundredths(one.coefficient), 0);
  return { marks: total / 10_000, maximum: (HIGHEST_MARK * weight) / 100 };
}

function roundHalfUp(value: number, decimals: number | null): number {
  if (decimals === null) return value;
  const scale = 10 ** decimals;
  return Math.round(Number((value * scale).toPrecision(13))) / scale;
}

type Deduction = { marks: number; eliminates: boolean; stated: boolean };

// Marks off the sheet for its errors; what nobody states cannot be counted, and is said not to be.
function deduction(errors: number, rules: DressageRules): Deduction {
  const limit = rules.errors_that_eliminate;
  if (limit !== null && errors >= limit) return { marks: 0, eliminates: true, stated: true };
  const costs = [rules.error_first_marks, rules.error_second_marks].slice(0, errors);
  if (errors > costs.length || costs.includes(null)) return { marks: 0, eliminates: false, stated: false };
  return { marks: costs.reduce<number>((sum, one) => sum + (one ?? 0), 0), eliminates: false, stated: true };
}

/** (100 − per cent) × the coefficient of the era: 1.5 before 2018, 1 since and where it is not stated. */
export function penaltiesOf(percent: number, rules: DressageRules): number {
  const exact = Number(((100 - percent) * (rules.penalty_coefficient ?? 1)).toPrecision(12));
  return roundHalfUp(exact, rules.penalties_decimals);
}

/** Percentage and penalties of one judge's sheet with the rider's errors. */
export function scoreSheet(sheet: Sheet, errors: number, rules: DressageRules): DressageScore {
  if (notBelowZero("marks", sheet.marks) > aboveZero("maximum", sheet.maximum)) throw new BadInput("marks", "too_big");
  const off = deduction(notBelowZero("errors", errors), rules);
  if (off.eliminates) return { sheet, percent: null, penalties: null, eliminated: true, errors_not_counted: false };
  const percent = roundHalfUp((100 * Math.max(0, sheet.marks - off.marks)) / sheet.maximum, rules.percent_decimals);
  return { sheet, percent, penalties: penaltiesOf(percent, rules), eliminated: false, errors_not_counted: !off.stated };
}

/** The same from the marks themselves. */
export function dressageScore(marks: Marked[], errors: number, rules: DressageRules): DressageScore {
  return scoreSheet(sheetOf(marks), errors, rules);
}
