// Ids made on this phone: UUIDv7 (RFC 9562 section 5.7), so that sorting by id sorts by the time of making.

let lastMs = 0;
let counter = 0;

/** A new id. Ids of one page never sort backwards, even when the phone's clock is put back. */
export function uuid7(nowMs: number = Date.now()): string {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  stamp(bytes, tick(nowMs));
  bytes[6] = 0x70 | (counter >> 8);
  bytes[7] = counter & 0xff;
  bytes[8] = 0x80 | (bytes[8]! & 0x3f);
  return inGroups(bytes);
}

// rand_a is used as a counter within one millisecond (RFC 9562 section 6.2, method 1)
function tick(nowMs: number): number {
  if (nowMs > lastMs) {
    lastMs = nowMs;
    counter = 0;
  } else if (++counter > 0xfff) {
    lastMs += 1;
    counter = 0;
  }
  return lastMs;
}

function stamp(bytes: Uint8Array, ms: number): void {
  for (let place = 5, rest = ms; place >= 0; place--, rest = Math.floor(rest / 256)) bytes[place] = rest % 256;
}

export function inGroups(bytes: Uint8Array): string {
  const hex = Array.from(bytes, (byte) => byte.toString(16).padStart(2, "0")).join("");
  return [hex.slice(0, 8), hex.slice(8, 12), hex.slice(12, 16), hex.slice(16, 20), hex.slice(20)].join("-");
}
