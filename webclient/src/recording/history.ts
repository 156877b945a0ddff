// What one version of a body changed against the version before, field by field.

export interface Change {
  path: string;
  from: unknown;
  to: unknown;
}

type Plain = Record<string, unknown>;

const isPlain = (value: unknown): value is Plain => typeof value === "object" && value !== null && !Array.isArray(value);

const same = (one: unknown, other: unknown): boolean => JSON.stringify(one) === JSON.stringify(other);

/** Changed fields, nested ones by a dotted path. A list counts as one value. Null and absent are the same. */
export function changesBetween(before: object, after: object, above = ""): Change[] {
  const [from, to] = [before as Plain, after as Plain];
  const keys = [...new Set([...Object.keys(from), ...Object.keys(to)])];
  return keys.flatMap((key) => changesOf(above + key, from[key] ?? null, to[key] ?? null));
}

function changesOf(path: string, from: unknown, to: unknown): Change[] {
  if (isPlain(from) && isPlain(to)) return changesBetween(from, to, `${path}.`);
  return same(from, to) ? [] : [{ path, from, to }];
}
