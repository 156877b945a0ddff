// Whether two JSON values say the same, whatever the order of their keys.

export function same(one: unknown, other: unknown): boolean {
  if (one === other) return true;
  if (typeof one !== "object" || typeof other !== "object" || one === null || other === null) return false;
  if (Array.isArray(one) !== Array.isArray(other)) return false;
  const keys = Object.keys(one);
  return keys.length === Object.keys(other).length && keys.every((key) => sameUnder(key, one, other));
}

function sameUnder(key: string, one: object, other: object): boolean {
  return Object.hasOwn(other, key) && same((one as never)[key], (other as never)[key]);
}
