// Takes the text of a GPX file apart as it comes in, piece by piece, and keeps nothing of it: tags by their own
// name (whatever prefix or namespace), attributes, text. Document types are refused, and with them every entity
// of somebody's own; nothing outside the file is ever read.

/** Why a file is not read; `gpx.<reason>` has the words. */
export type Refused = "not_gpx" | "zipped" | "doctype" | "too_deep" | "broken" | "too_large" | "too_many" | "no_points";

export class NotRead extends Error {
  reason: Refused;

  constructor(reason: Refused) {
    super(`GPX not read: ${reason}`);
    this.reason = reason;
  }
}

export interface Reader {
  open: (name: string, attributes: string) => void;
  close: (name: string) => void;
  text: (text: string) => void;
}

const LONGEST_TAG = 100_000;
const OPENINGS: [string, string][] = [["<!--", "-->"], ["<![CDATA[", "]]>"], ["<?", "?>"]];

/** Feed it the text in pieces of any size, then `end`. Throws NotRead. */
export class Tokens {
  #reader: Reader;
  #rest = "";
  /** What ends the comment, text block or instruction we are in; its contents are passed over. */
  #until: string | null = null;

  constructor(reader: Reader) {
    this.#reader = reader;
  }

  feed(piece: string): void {
    const text = this.#rest + piece;
    let from = 0;
    for (let next = this.#step(text, from); next > from; next = this.#step(text, from)) from = next;
    this.#rest = text.slice(from);
    if (this.#rest.length > LONGEST_TAG) throw new NotRead("broken");
  }

  end(): void {
    if (this.#until !== null || this.#rest.includes("<")) throw new NotRead("broken");
  }

  /** Where reading goes on; `from` itself where more text is needed first. */
  #step(text: string, from: number): number {
    if (this.#until !== null) return this.#skip(text, from, this.#until);
    const tag = text.indexOf("<", from);
    if (tag < 0) return this.#tell(text, from, text.length);
    if (tag > from) return this.#tell(text, from, tag);
    const special = text[tag + 1] === "!" || text[tag + 1] === "?" || text.length < tag + 2;
    return special ? this.#special(text, tag) : this.#tag(text, tag);
  }

  #tell(text: string, from: number, to: number): number {
    if (to > from) this.#reader.text(text.slice(from, to));
    return to;
  }

  #skip(text: string, from: number, until: string): number {
    const end = text.indexOf(until, from);
    const stop = end < 0 ? Math.max(from, text.length - until.length + 1) : end;
    if (until === "]]>") this.#tell(text, from, stop);
    if (end < 0) return stop;
    this.#until = null;
    return end + until.length;
  }

  #special(text: string, tag: number): number {
    for (const [opening, until] of OPENINGS) {
      if (text.startsWith(opening, tag)) {
        this.#until = until;
        return tag + opening.length;
      }
      if (opening.startsWith(text.slice(tag))) return tag; // the piece ends within
    }
    throw new NotRead("doctype");
  }

  #tag(text: string, tag: number): number {
    const end = endOfTag(text, tag);
    if (end < 0) return tag;
    const closing = text[tag + 1] === "/";
    const empty = text[end - 1] === "/";
    const inside = text.slice(tag + (closing ? 2 : 1), empty ? end - 1 : end);
    const [, name, attributes] = /^(?:[^\s:]*:)?([^\s:]+)([^]*)$/.exec(inside) ?? [];
    if (name === undefined) throw new NotRead("broken");
    if (closing) this.#reader.close(name);
    else this.#reader.open(name, attributes!);
    if (empty && !closing) this.#reader.close(name);
    return end + 1;
  }
}

/** The `>` that ends the tag, not one within quotes; -1 where it has not come in yet. */
function endOfTag(text: string, tag: number): number {
  let quote = "";
  for (let place = tag + 1; place < text.length; place++) {
    const letter = text[place]!;
    if (quote !== "") quote = letter === quote ? "" : quote;
    else if (letter === ">") return place;
    else if (letter === '"' || letter === "'") quote = letter;
  }
  return -1;
}

/** Finds the value of an attribute by its own name. */
export function attribute(name: string): (attributes: string) => string | null {
  const pattern = new RegExp(`(?:^|\\s)${name}\\s*=\\s*("([^"]*)"|'([^']*)')`);
  return (attributes) => {
    const found = pattern.exec(attributes);
    return found ? (found[2] ?? found[3]!) : null;
  };
}

const ENTITIES: Record<string, string> = { amp: "&", lt: "<", gt: ">", quot: '"', apos: "'" };

/** The five entities that XML itself knows and characters by number; any other stays as it is written. */
export function plain(text: string): string {
  return text.replace(/&(?:#(\d{1,7})|#x([0-9a-f]{1,6})|(amp|lt|gt|quot|apos));/gi, (whole, decimal, hex, name) => {
    if (name) return ENTITIES[name.toLowerCase()]!;
    const code = decimal ? Number(decimal) : parseInt(hex, 16);
    return code > 0 && code <= 0x10ffff && !(code >= 0xd800 && code <= 0xdfff) ? String.fromCodePoint(code) : whole;
  });
}
