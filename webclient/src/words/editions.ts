// Where the texts beyond the shell are kept, and under which addresses: /assets/words-<language>-<digest>.json.
// The page (kept.ts) and the worker (sw.ts) share this.

export const KEPT_TEXTS = "fieldtally-texts";

/** Those of `addresses` that hold the language of `url`, that very edition last. */
export function editionsOf(url: string, addresses: readonly string[]): string[] {
  const undated = (address: string) => address.slice(0, address.lastIndexOf("-"));
  const same = addresses.filter((address) => undated(address).endsWith(undated(url)));
  const isIt = (address: string) => address.endsWith(url);
  return [...same.filter((address) => !isIt(address)), ...same.filter(isIt)];
}
