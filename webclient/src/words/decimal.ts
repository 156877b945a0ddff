// The mark before the decimals, in the language of the texts: 8.5, in German 8,5; and the one between thousands. No
// signal, so that the pure modules may use it; index.ts sets it before it changes the texts, and these bring every
// screen to draw anew.

let mark = ".";
let thousands = ",";

export function setDecimalMark(language: string): void {
  mark = new Intl.NumberFormat(language).format(1.5)[1]!;
  thousands = new Intl.NumberFormat(language).format(12_345)[2]!;
}

export function decimalMark(): string {
  return mark;
}

/** A number written with a point, as people read it. */
export function decimal(written: string | number): string {
  return String(written).replace(".", mark);
}

/** The same for what is only read, never typed back: 12,345 m. Four digits stay together, as a year does. */
export function grouped(written: string | number): string {
  return decimal(written).replace(/^-?\d{5,}/, (whole) => whole.replace(/\B(?=(\d{3})+$)/g, thousands));
}
