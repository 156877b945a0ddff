import { hasKeys } from "./useWatchKeys.ts";

/** Which key does it, where there are keys. */
export function Key({ of }: { of: string }) {
  return hasKeys.value ? <kbd class="key" aria-hidden="true">{of}</kbd> : null;
}
