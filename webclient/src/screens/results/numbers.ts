// Numbers as people type them: comma or point, nothing for "not said".

/** undefined: nothing typed. null: no number, or out of bounds. */
export function typedNumber(text: string, least: number, most: number, whole = false): number | null | undefined {
  const plain = text.trim().replace(",", ".").replace("−", "-");
  if (plain === "") return undefined;
  if (!/^-?\d{1,6}(\.\d{1,4})?$/.test(plain)) return null;
  const value = Number(plain);
  if (value < least || value > most || (whole && !Number.isInteger(value))) return null;
  return value;
}

/** A field of a form: which draft text, between what bounds. */
export interface Bounds {
  least: number;
  most: number;
  whole?: boolean;
}

export function wrong(text: string, { least, most, whole }: Bounds): boolean {
  return typedNumber(text, least, most, whole) === null;
}

export function orNull(text: string, { least, most, whole }: Bounds): number | null {
  return typedNumber(text, least, most, whole) ?? null;
}
