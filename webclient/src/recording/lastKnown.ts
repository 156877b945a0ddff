// What a screen last knew, shown while it asks again: going from fence to fence must not blank the list.

const known = new Map<string, unknown>();

/** `value`, or while it is still loading what it last was under this key. */
export function lastKnown<T>(key: string, value: T | undefined): T | undefined {
  if (value === undefined) return known.get(key) as T | undefined;
  known.set(key, value);
  return value;
}
