// A flatwork test's percentage and penalties from its marks: the twin of
// server/fieldtally/trade/dressage_score.py. Arithmetic in hundredths, so that halves round as on paper.

import { aboveZero, BadInput, notBelowZero } from "./badInput.ts";

export interface Marked {
  mark: number;
  coefficient: number;
}

/** What a rulebook says of errors and rounding; null where it does not. */
export interface DressageRules {
  /** Marks taken off the sum for the first, second … error; one error more eliminates. */
  error_deductions: number[] | null;
  percent_decimals: number | null;
  penalty_coefficient: number;
}

export const NO_DRESSAGE_RULES: DressageRules = { error_deductions: null, percent_decimals: null, penalty_coefficient: 1 };

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

// Marks off the sheet: null when the errors eliminate, zero when nobody says what they cost.
function deduction(errors: number, rules: DressageRules): number | null {
  const each = rules.error_deductions ?? [];
  if (rules.error_deductions !== null && errors > each.length) return null;
  return each.slice(0, errors).reduce((sum, one) => sum + one, 0);
}

/** (100 − per cent) × the coefficient of the era: 1.5 before 2018, 1 since. */
export function penaltiesOf(percent: number, rules: DressageRules): number {
  return Number(((100 - percent) * rules.penalty_coefficient).toPrecision(12));
}

/** Percentage and penalties of one judge's sheet with the rider's errors. */
export function dressageScore(marks: Marked[], errors: number, rules: DressageRules): DressageScore {
  const sheet = sheetOf(marks);
  const off = deduction(notBelowZero("errors", errors), rules);
  const errors_not_counted = errors > 0 && rules.error_deductions === null;
  if (off === null) return { sheet, percent: null, penalties: null, eliminated: true, errors_not_counted };
  const percent = roundHalfUp((100 * Math.max(0, sheet.marks - off)) / sheet.maximum, rules.percent_decimals);
  return { sheet, percent, penalties: penaltiesOf(percent, rules), eliminated: false, errors_not_counted };
}
