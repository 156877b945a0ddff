// Bytes as text in a copy, a photo at a time.

const AT_ONCE = 0x8000;

export function toBase64(bytes: ArrayBuffer): string {
  const all = new Uint8Array(bytes);
  let text = "";
  for (let from = 0; from < all.length; from += AT_ONCE) text += String.fromCharCode(...all.subarray(from, from + AT_ONCE));
  return btoa(text);
}

/** Throws for what is no base64. */
export function fromBase64(text: string): ArrayBuffer {
  return Uint8Array.from(atob(text), (sign) => sign.charCodeAt(0)).buffer;
}
