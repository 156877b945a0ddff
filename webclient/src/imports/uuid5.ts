// Ids made from content: UUIDv5 (RFC 9562 section 5.5), so that the same thing brought in twice is the same thing.

import { inGroups } from "../entries/uuid7.ts";

const text = new TextEncoder();

/** The id of `name` within `namespace`, itself an id. */
export async function uuid5(namespace: string, name: string): Promise<string> {
  const space = namespace.replaceAll("-", "").match(/../g)!.map((pair) => parseInt(pair, 16));
  const bytes = new Uint8Array(await crypto.subtle.digest("SHA-1", new Uint8Array([...space, ...text.encode(name)]))).slice(0, 16);
  bytes[6] = 0x50 | (bytes[6]! & 0x0f);
  bytes[8] = 0x80 | (bytes[8]! & 0x3f);
  return inGroups(bytes);
}
