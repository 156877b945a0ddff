// What the pure functions say when they are given something that cannot be. Screens show `field` and `code`
// in words (words/en-GB/pace.json); the twin in Python is server/fieldtally/trade/bad_input.py.

export type Fault =
  | "not_a_number"
  | "not_above_zero"
  | "below_zero"
  | "unknown_word"
  | "too_big"
  | "over_an_hour"
  | "beyond_finish"
  | "out_of_order";

export class BadInput extends Error {
  field: string;
  code: Fault;

  constructor(field: string, code: Fault) {
    super(`${field}: ${code}`);
    this.name = "BadInput";
    this.field = field;
    this.code = code;
  }
}

function finite(field: string, value: unknown): number {
  if (typeof value !== "number" || !Number.isFinite(value)) throw new BadInput(field, "not_a_number");
  return value;
}

/** `value` as a finite number above zero, or BadInput naming `field`. */
export function aboveZero(field: string, value: unknown): number {
  if (finite(field, value) <= 0) throw new BadInput(field, "not_above_zero");
  return value as number;
}

/** `value` as a finite number of at least zero, or BadInput naming `field`. */
export function notBelowZero(field: string, value: unknown): number {
  if (finite(field, value) < 0) throw new BadInput(field, "below_zero");
  return value as number;
}
