// When a record was first made. An edit writes a later entry, so the time of the newest entry would move an
// edited attempt to the end of the outing; the record's own id carries the time of the tap.

/** What of a saved record this folder reads. */
export interface Made<Body> {
  record_id: string;
  body: Body;
  recorded_at: string;
}

const VERSION_7 = /^([0-9a-f]{8})-([0-9a-f]{4})-7/;

/** Milliseconds since 1970 UTC. From the record's id (RFC 9562, version 7) where it has one. */
export function madeAt(record: Made<unknown>): number {
  const found = VERSION_7.exec(record.record_id);
  return found ? parseInt(found[1]! + found[2]!, 16) : Date.parse(record.recorded_at);
}

/** Oldest first; those of one millisecond in the order of their ids. A new list. */
export function inOrderMade<R extends Made<unknown>>(records: readonly R[]): R[] {
  return [...records].sort((a, b) => madeAt(a) - madeAt(b) || (a.record_id < b.record_id ? -1 : 1));
}
