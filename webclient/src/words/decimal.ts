// The mark before the decimals, in the language of the texts: 8.5, in German 8,5. No signal, so that the pure
// modules may use it; index.ts sets it before it changes the texts, and these bring every screen to draw anew.

let mark = ".";

export function setDecimalMark(language: string): void {
  mark = new Intl.NumberFormat(language).format(1.5)[1]!;
}

export function decimalMark(): string {
  return mark;
}

/** A number written with a point, as people read it. */
export function decimal(written: string | number): string {
  return String(written).replace(".", mark);
}
