// A GPX file (1.0 or 1.1, topografix.com) as points. Whatever optional part is missing, what there is is read, and
// every point or time that is left out is counted and said: never a duration of nothing, never a speed without times.

import { metresBetween } from "../location/earth.ts";
import { everyFor, type Point, thin } from "../location/points.ts";
import { attribute, NotRead, plain, type Reader, Tokens } from "./tokens.ts";

export const MOST_BYTES = 64 * 1024 * 1024;
const MOST_READ = 1_000_000;
const MOST_DEPTH = 64;
const MOST_NAME = 120;
const EARLIEST_MS = Date.UTC(1990, 0);
const LATEST_MS = Date.UTC(2199, 11, 31);

/** What was left out, and how often; `gpx.note_<what>` has the words. */
export interface Left {
  what: "bad_places" | "repeated" | "untimed" | "out_of_order" | "times" | "routes" | "waypoints";
  n: number;
}

export interface GpxRead {
  name: string | null;
  /** At least two; with times throughout and each later than the last, or without any. Thinned to what a trace holds. */
  points: Point[];
  /** How many there were, and the length in m along all of them, gaps left out. */
  count: number;
  length_m: number;
  left: Left[];
}

const latitudeIn = attribute("lat");
const longitudeIn = attribute("lon");

/** Some programs write the decimal sign of their country. */
function coordinate(text: string | null, most: number): number | null {
  const value = text?.trim() ? Number(text.replace(",", ".")) : NaN;
  return Math.abs(value) <= most ? value : null;
}

/** ISO 8601; without a zone it is UTC, as GPX has it. Null for what is no moment of our time. */
export function momentOf(text: string | null): number | null {
  const found = /^\s*(\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d(?:[.,]\d{1,9})?)(?:Z|([+-]\d\d):?(\d\d))?\s*$/i.exec(text ?? "");
  if (!found) return null;
  const at_ms = Date.parse(found[1]!.replace(",", ".") + (found[2] ? `${found[2]}:${found[3]}` : "Z"));
  return at_ms >= EARLIEST_MS && at_ms <= LATEST_MS ? at_ms : null;
}

/** Points in columns: half a million of them must not fill a phone. NaN is a time that is not known. */
class Columns {
  latitude: number[] = [];
  longitude: number[] = [];
  at_ms: number[] = [];
  accuracy_m = new Map<number, number>();
  breaks = new Set<number>();

  get length(): number {
    return this.latitude.length;
  }

  /** False where it repeats the last one. */
  add({ latitude, longitude, at_ms, accuracy_m, breaks }: Point): boolean {
    const n = this.length;
    const time = at_ms ?? NaN;
    if (n > 0 && !breaks && this.samePlace(n - 1, latitude, longitude) && Object.is(this.at_ms[n - 1], time)) return false;
    this.latitude.push(latitude);
    this.longitude.push(longitude);
    this.at_ms.push(time);
    if (accuracy_m !== null) this.accuracy_m.set(n, accuracy_m);
    if (breaks && n > 0) this.breaks.add(n);
    return true;
  }

  samePlace(n: number, latitude: number, longitude: number): boolean {
    return this.latitude[n] === latitude && this.longitude[n] === longitude;
  }

  point(n: number, timed: boolean, breaks: boolean): Point {
    const [latitude, longitude] = [this.latitude[n]!, this.longitude[n]!];
    return { latitude, longitude, accuracy_m: this.accuracy_m.get(n) ?? null, at_ms: timed ? this.at_ms[n]! : null, ...(breaks && { breaks }) };
  }
}

/** Where a point may stand; the same words elsewhere, as in extensions, are none of ours. */
const isPoint = (name: string | undefined, parent: string | undefined): boolean =>
  (name === "trkpt" && parent === "trkseg") || (name === "rtept" && parent === "rte");

class Found implements Reader {
  name: string | null = null;
  tracks = new Columns();
  routes = new Columns();
  opened = false;
  counts = { bad_places: 0, repeated: 0, waypoints: 0 };
  #path: string[] = [];
  #point: Point | null = null;
  #breaks = false;
  #heard = "";

  open(name: string, attributes: string): void {
    const parent = this.#path.at(-1);
    if (parent === undefined && name !== "gpx") throw new NotRead("not_gpx");
    if (this.#path.push(name) > MOST_DEPTH) throw new NotRead("too_deep");
    this.#heard = "";
    this.opened = true;
    if (name === "trkseg" || name === "rte") this.#breaks = true;
    if (name === "wpt") this.counts.waypoints++;
    if (isPoint(name, parent)) this.#point = this.#place(attributes);
  }

  text(text: string): void {
    if (this.#heard.length < 1000) this.#heard += text;
  }

  close(name: string): void {
    if (this.#path.pop() !== name) throw new NotRead("broken");
    const parent = this.#path.at(-1);
    if (isPoint(name, parent)) this.#add(name === "trkpt" ? this.tracks : this.routes);
    else if (name === "time" && isPoint(parent, this.#path.at(-2)) && this.#point) this.#point.at_ms = momentOf(this.#heard);
    else if (name === "accuracy_m" && parent === "extensions" && this.#point) this.#point.accuracy_m = coordinate(this.#heard, 100_000);
    else if (name === "name" && (parent === "trk" || parent === "rte")) this.name ??= plain(this.#heard.trim()).slice(0, MOST_NAME) || null;
    this.#heard = "";
  }

  /** Whether all that was opened was closed. */
  get whole(): boolean {
    return this.opened && this.#path.length === 0;
  }

  #place(attributes: string): Point | null {
    const [latitude, longitude] = [coordinate(latitudeIn(attributes), 90), coordinate(longitudeIn(attributes), 180)];
    if (latitude === null || longitude === null) {
      this.counts.bad_places++;
      return null;
    }
    return { latitude, longitude, accuracy_m: null, at_ms: null };
  }

  #add(list: Columns): void {
    const point = this.#point;
    this.#point = null;
    if (!point) return;
    if (list.length >= MOST_READ) throw new NotRead("too_many");
    if (!list.add({ ...point, breaks: this.#breaks })) this.counts.repeated++;
    this.#breaks = false;
  }
}

interface Chosen {
  timed: boolean;
  places: number[];
  left: Partial<Record<Left["what"], number>>;
}

/** Times are kept where at least half of the points have them, each after the one before. */
function chosenOf(all: Columns): Chosen {
  const numbers = Array.from(all.latitude.keys());
  const untimed = all.at_ms.filter(Number.isNaN).length;
  let last_ms = -Infinity;
  const inOrder = numbers.filter((n) => all.at_ms[n]! > last_ms && ((last_ms = all.at_ms[n]!), true));
  if (inOrder.length >= 2 && inOrder.length * 2 >= all.length) {
    return { timed: true, places: inOrder, left: { untimed, out_of_order: all.length - untimed - inOrder.length } };
  }
  const places = numbers.filter((n) => n === 0 || all.breaks.has(n) || !all.samePlace(n - 1, all.latitude[n]!, all.longitude[n]!));
  return { timed: false, places, left: { times: all.length - untimed, repeated: all.length - places.length } };
}

/** The places at which a stretch begins among those chosen: a gap before one left out stays before the next. */
function breaksAmong(all: Columns, places: number[]): Set<number> {
  const chosen = new Set<number>();
  const breaks = [...all.breaks].reverse();
  places.forEach((n, place) => {
    while (breaks.length > 0 && breaks.at(-1)! <= n) {
      breaks.pop();
      if (place > 0) chosen.add(place);
    }
  });
  return chosen;
}

function madeOf({ name, tracks, routes, counts }: Found): GpxRead {
  const all = tracks.length > 0 ? tracks : routes;
  const { timed, places, left } = chosenOf(all);
  if (places.length < 2) throw new NotRead("no_points");
  const breaks = breaksAmong(all, places);
  const pointAt = (place: number, broken: boolean): Point => all.point(places[place]!, timed, broken);
  let length_m = 0;
  for (let place = 1; place < places.length; place++) if (!breaks.has(place)) length_m += metresBetween(pointAt(place - 1, false), pointAt(place, false));
  const points = thin(places.length, everyFor(places.length), (place) => breaks.has(place)).map((kept) => pointAt(kept.n, kept.breaks));
  const said = { ...counts, ...left, repeated: counts.repeated + (left.repeated ?? 0), routes: all === tracks ? routes.length : 0 };
  return { name, points, count: places.length, length_m, left: Object.entries(said).flatMap(([what, n]) => (n > 0 ? [{ what: what as Left["what"], n }] : [])) };
}

/** The points of a GPX text that comes in pieces. Throws NotRead. */
export async function readGpx(pieces: AsyncIterable<string> | Iterable<string>): Promise<GpxRead> {
  const found = new Found();
  const tokens = new Tokens(found);
  for await (const piece of pieces) tokens.feed(piece);
  tokens.end();
  if (!found.whole) throw new NotRead(found.opened ? "broken" : "not_gpx");
  return madeOf(found);
}

const ZIPPED = ["PK", "\x1f\x8b"];

/** The points of a file on the phone, read as it comes off the disk. */
export async function readGpxFile(file: Blob): Promise<GpxRead> {
  if (file.size > MOST_BYTES) throw new NotRead("too_large");
  const start = await file.slice(0, 2).arrayBuffer().then((bytes) => String.fromCharCode(...new Uint8Array(bytes)));
  if (ZIPPED.includes(start)) throw new NotRead("zipped");
  return readGpx(textOf(file));
}

async function* textOf(file: Blob): AsyncGenerator<string> {
  const reader = file.stream().pipeThrough(new TextDecoderStream() as never as TransformStream<Uint8Array, string>).getReader();
  for (let next = await reader.read(); !next.done; next = await reader.read()) yield next.value;
}
