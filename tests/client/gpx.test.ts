// GPX files in and out: what is missing, what is odd, what is hostile. Faults IE-04 and IE-06 of the project's list.
// The format is GPX 1.1 of topografix.com; tests/client/test_gpx.py holds exports against its schema's rules and a
// reference library.

import assert from "node:assert/strict";
import { describe, it } from "node:test";

import type { Trace } from "../../webclient/src/entries/bodies.ts";
import { completeBody } from "../../webclient/src/entries/bodies.ts";
import { type GpxRead, momentOf, MOST_BYTES, readGpx, readGpxFile } from "../../webclient/src/gpx/read.ts";
import type { NotRead } from "../../webclient/src/gpx/tokens.ts";
import { writeGpx } from "../../webclient/src/gpx/write.ts";
import { bodyOf, MOST_POINTS, type Point, pointsOf } from "../../webclient/src/location/points.ts";
import { measure } from "../../webclient/src/location/track.ts";
import { british } from "../../webclient/src/words/british.ts";
import { ride, START_MS } from "./tracePoints.ts";

const HEAD = '<?xml version="1.0" encoding="UTF-8"?>\n<gpx version="1.1" creator="invented" xmlns="http://www.topografix.com/GPX/1/1">';
const iso = (n: number): string => new Date(START_MS + 1000 * n).toISOString();
const place = (n: number): string => `lat="${(52.2 + n * 6e-5).toFixed(6)}" lon="-1.600000"`;
const point = (n: number, time: string | null = iso(n)): string => `<trkpt ${place(n)}>${time === null ? "" : `<time>${time}</time>`}</trkpt>`;
const points = (count: number, time: (n: number) => string | null = iso): string => Array.from({ length: count }, (_, n) => point(n, time(n))).join("\n");
const track = (inside: string): string => `${HEAD}<trk><name>Top hedge</name><trkseg>${inside}</trkseg></trk></gpx>`;

/** In pieces of odd sizes, as a disk gives them. */
function* inPieces(text: string, size = 37): Generator<string> {
  for (let from = 0; from < text.length; from += size) yield text.slice(from, from + size);
}
const read = (text: string, size?: number): Promise<GpxRead> => readGpx(inPieces(text, size));
const left = ({ left }: GpxRead) => Object.fromEntries(left.map(({ what, n }) => [what, n]));
const timed = ({ points }: GpxRead): boolean => points.every((each) => each.at_ms !== null);
const drawn = ({ points }: GpxRead): boolean => points.every((each) => each.at_ms === null);
const reasonOf = async (reading: Promise<GpxRead>): Promise<string> => {
  const reason = await reading.then(() => "read", (error: NotRead) => error.reason ?? String(error));
  assert.ok(reason === "read" || `gpx.${reason}` in british, `no words for ${reason}`);
  return reason;
};
const speedOf = ({ points }: GpxRead): number => measure(points).moved!.speed_mpm;

describe("a whole track", () => {
  it("is read the same in one piece, in small ones, and letter by letter", async () => {
    const text = track(points(40));
    const whole = await readGpx([text]);
    assert.deepEqual([whole.name, whole.count, whole.left], ["Top hedge", 40, []]);
    for (const size of [1, 2, 7, 64]) assert.deepEqual(await read(text, size), whole);
    assert.deepEqual(whole.points[3], { latitude: 52.20018, longitude: -1.6, accuracy_m: null, at_ms: START_MS + 3000 });
    assert.ok(Math.abs(speedOf(whole) - 400) < 5);
  });
  it("may have another namespace, a prefix, GPX 1.0, comments, text blocks and spaces where XML allows them", async () => {
    const inside = points(20);
    const same = (await read(track(inside))).points;
    for (const text of [
      track(inside).replace(/xmlns="[^"]*"/, ""),
      track(inside).replace("GPX/1/1", "GPX/1/0").replace('version="1.1"', 'version="1.0"'),
      track(inside).replace(/xmlns=/, "xmlns:g=").replace(/<(\/?)(gpx|trkpt|trkseg|trk|name|time)\b/g, "<$1g:$2"),
      track(inside).replace(/<time>/g, "<!-- <time>no</time> > --><time ><![CDATA[").replace(/<\/time>/g, "]]></time\n>"),
      track(inside).replace(/lat="([^"]*)" lon="([^"]*)"/g, "\n  lon = '$2'\n  note='a > b' lat\n=\n'$1' "),
    ]) assert.deepEqual((await read(text, 11)).points, same);
  });
  it("may use commas for decimals", async () => {
    assert.deepEqual((await read(track(points(20).replace(/"(-?\d+)\.(\d+)"/g, '"$1,$2"')))).points, (await read(track(points(20)))).points);
  });
  it("ignores what extensions and waypoints say about time and place", async () => {
    const text = `${HEAD}<metadata><time>2001-01-01T00:00:00Z</time></metadata><wpt lat="1" lon="2"><time>2001-01-01T00:00:00Z</time><name>W</name></wpt>
      <trk><trkseg>${points(5).replace(/<time>/g, "<extensions><x:more><x:time>1999-01-01T00:00:00Z</x:time><x:trkpt lat='1' lon='1'/></x:more></extensions><time>")}</trkseg></trk></gpx>`;
    const found = await read(text);
    assert.deepEqual([found.name, found.points.map((each) => each.at_ms), left(found)], [null, [0, 1, 2, 3, 4].map((n) => START_MS + 1000 * n), { waypoints: 1 }]);
  });
  it("of several segments has a gap between each two", async () => {
    const found = await read(track(`${points(10)}</trkseg><trkseg></trkseg><trkseg>${Array.from({ length: 10 }, (_, n) => point(n + 12)).join("")}`));
    assert.deepEqual(found.points.flatMap((each, n) => (each.breaks ? [n] : [])), [10]);
    assert.equal(measure(found.points).gaps.length, 1);
  });
});

describe("times (IE-04)", () => {
  it("missing throughout: a course with a length and no speed", async () => {
    const found = await read(track(points(100, () => null)));
    assert.deepEqual([drawn(found), found.count, found.left], [true, 100, []]);
    assert.ok(Math.abs(found.length_m - 99 * 6.676) < 0.5, `${found.length_m}`);
  });
  it("missing on the first and the last point: those two are left out and said", async () => {
    const found = await read(track(points(30, (n) => (n === 0 || n === 29 ? null : iso(n)))));
    assert.deepEqual([timed(found), found.count, left(found)], [true, 28, { untimed: 2 }]);
    assert.ok(Math.abs(speedOf(found) - 400) < 5);
  });
  it("missing on 4 of 1,400: those are left out and said, the speed stays", async () => {
    const found = await read(track(points(1400, (n) => (n % 350 === 17 ? null : iso(n)))));
    assert.deepEqual([timed(found), found.count, left(found)], [true, 1396, { untimed: 4 }]);
    assert.ok(Math.abs(speedOf(found) - 400) < 5);
  });
  it("on a few points only: the times are left out and said", async () => {
    const found = await read(track(points(100, (n) => (n % 10 === 0 ? iso(n) : null))));
    assert.deepEqual([drawn(found), left(found)], [true, { times: 10 }]);
  });
  it("all the same: a course, never 0 s or an infinite speed", async () => {
    const found = await read(track(points(100, () => iso(0))));
    assert.deepEqual([drawn(found), left(found)], [true, { times: 100 }]);
  });
  it("that go back: the points are left out and said", async () => {
    const found = await read(track(points(50, (n) => iso(n === 20 ? 3 : n === 30 ? 29 : n))));
    assert.deepEqual([timed(found), left(found)], [true, { out_of_order: 2 }]);
    assert.ok(Math.abs(speedOf(found) - 400) < 5);
  });
  it("are read with zones, with fractions, without a zone as UTC, and refused where they are none", () => {
    const noon = Date.UTC(2026, 4, 3, 12);
    for (const text of ["2026-05-03T12:00:00Z", " 2026-05-03T12:00:00 ", "2026-05-03T13:00:00+01:00", "2026-05-03T07:00:00.000-0500"]) assert.equal(momentOf(text), noon, text);
    assert.equal(momentOf("2026-05-03T12:00:00,25Z"), noon + 250);
    for (const text of [null, "", "yesterday", "2026-13-03T12:00:00Z", "0000-00-00T00:00:00Z", "1970-01-01T00:00:00Z", "9999-01-01T00:00:00Z", "2026-05-03", "1777799553"]) assert.equal(momentOf(text), null, String(text));
  });
});

describe("what is missing or odd (IE-04)", () => {
  it("no metadata, no name: read", async () => assert.equal((await read(`${HEAD}<trk><trkseg>${points(3)}</trkseg></trk></gpx>`)).count, 3));
  it("an empty segment beside a full one: read", async () => assert.equal((await read(track(`</trkseg><trkseg>${points(3)}`))).count, 3));
  it("routes only: a course", async () => {
    const found = await read(`${HEAD}<rte><name>Course</name>${points(9, () => null).replaceAll("trkpt", "rtept")}</rte></gpx>`);
    assert.deepEqual([found.name, found.count, drawn(found), found.left], ["Course", 9, true, []]);
  });
  it("a route beside a track: the track, and the route said", async () => {
    const found = await read(`${HEAD}<rte>${points(4, () => null).replaceAll("trkpt", "rtept")}</rte><trk><trkseg>${points(9)}</trkseg></trk></gpx>`);
    assert.deepEqual([found.count, left(found)], [9, { routes: 4 }]);
  });
  it("places that are none are left out and said", async () => {
    const bad = ['<trkpt lat="91" lon="0"/>', '<trkpt lat="x" lon="0"/>', '<trkpt lat="" lon="0"/>', '<trkpt lon="0"/>', '<trkpt lat="1e999" lon="0"/>', '<trkpt lat="NaN" lon="0"/>'];
    const found = await read(track(points(5) + bad.join("")));
    assert.deepEqual([found.count, left(found)], [5, { bad_places: bad.length }]);
  });
  it("nothing in it: said in words", async () => {
    for (const inside of ["", "<trk/>", "<trk><trkseg/></trk>", `<trk><trkseg>${point(1)}</trkseg></trk>`, '<wpt lat="1" lon="2"/>']) {
      assert.equal(await reasonOf(read(`${HEAD}${inside}</gpx>`)), "no_points");
    }
  });
  it("repeated points are one, standing still with times is not", async () => {
    const again = point(3);
    const found = await read(track(points(4) + again.repeat(500) + points(9).split("\n").slice(4).join("")));
    assert.deepEqual([found.count, left(found)], [9, { repeated: 500 }]);
    assert.equal((await read(track(points(60).replace(/lat="[^"]*"/g, 'lat="52.2"')))).count, 60);
    const placesOnly = await read(track(points(9, () => null) + point(8, null).repeat(7)));
    assert.deepEqual([placesOnly.count, left(placesOnly)], [9, { repeated: 7 }]);
  });
});

describe("what is hostile (IE-06)", () => {
  const bomb = `<?xml version="1.0"?><!DOCTYPE gpx [${Array.from({ length: 20 }, (_, n) => `<!ENTITY e${n + 1} "${`&e${n};`.repeat(10)}">`).join("")}]>${track(points(3)).replace("Top hedge", "&e20;").slice(39)}`;
  it("entities of its own, nested 20 deep: refused before they count", async () => assert.equal(await reasonOf(read(bomb)), "doctype"));
  it("an entity from outside: refused, nothing is fetched", async () => {
    assert.equal(await reasonOf(read(`<?xml version="1.0"?><!DOCTYPE gpx SYSTEM "file:///etc/hostname" [<!ENTITY x SYSTEM "https://example.org/">]>${track(points(3)).slice(39)}`)), "doctype");
  });
  it("an entity nobody declared stays as it is written", async () => assert.equal((await read(track(points(3)).replace("Top hedge", "&e20; &amp; &#x41;&#66;&#0;"))).name, "&e20; & AB&#0;"));
  it("a million nested tags: refused at once", async () => {
    const nested = (function* () {
      yield HEAD;
      for (let n = 0; n < 1000; n++) yield "<a>".repeat(1000);
    })();
    assert.equal(await reasonOf(readGpx(nested)), "too_deep");
  });
  it("a tag without an end, however long: refused", async () => {
    const endless = (function* () {
      yield `${HEAD}<trk x="`;
      for (let n = 0; n < 10_000; n++) yield ">".repeat(10_000);
    })();
    assert.equal(await reasonOf(readGpx(endless)), "broken");
  });
  it("more points than anybody rides: refused in words", async () => {
    const many = (function* () {
      yield `${HEAD}<trk><trkseg>`;
      for (let n = 0; n < 1100; n++) yield Array.from({ length: 1000 }, (_, m) => `<trkpt lat="${(m % 90)}" lon="${n % 90}"/>`).join("");
    })();
    assert.equal(await reasonOf(readGpx(many)), "too_many");
  });
  it("a file larger than the limit: refused before it is read", async () => {
    assert.equal(await reasonOf(readGpxFile({ size: MOST_BYTES + 1 } as Blob)), "too_large");
  });
  it("a zip, other XML, no XML, cut off in the middle: each said for what it is", async () => {
    assert.equal(await reasonOf(readGpxFile(new Blob(["PK\x03\x04 and so on"]))), "zipped");
    assert.equal(await reasonOf(readGpxFile(new Blob([new Uint8Array([0x1f, 0x8b, 8, 0])]))), "zipped");
    assert.equal(await reasonOf(read("<html><body/></html>")), "not_gpx");
    assert.equal(await reasonOf(read("lat,lon\n1,2\n")), "not_gpx");
    assert.equal(await reasonOf(read(track(points(9)).slice(0, 400))), "broken");
    assert.equal(await reasonOf(read(track(points(9)).replace("</trkseg>", "</trk>"))), "broken");
  });
});

const TRACE_OF = { outing_id: "019dee92-bc71-7001-8a52-5c0a4e9b1f1f", source: "phone" as const, canter_id: null, name: "Hedge & <ditch> “Zoë” \u0007" };
const traceOf = (list: Point[]): Trace => completeBody("trace", bodyOf(list, TRACE_OF));
const rounded = (list: Point[]) => list.map((each) => ({ ...each, latitude: Math.round(each.latitude * 1e6), longitude: Math.round(each.longitude * 1e6) }));

describe("written and read again", () => {
  it("is the same trace: places, times to the millisecond, accuracy, gaps", async () => {
    const ridden = ride(60, (s) => [6.7 * s, s % 7], () => 0.37, { accuracy: 7 }).map((each, n) => ({ ...each, at_ms: each.at_ms! + (n % 3) * 7, ...(n === 30 && { breaks: true }) }));
    const trace = traceOf(ridden);
    const again = await readGpxFile(new Blob([writeGpx([trace], START_MS)]));
    assert.deepEqual(bodyOf(again.points, TRACE_OF), bodyOf(pointsOf(trace), TRACE_OF));
    assert.equal(again.name, "Hedge & <ditch> “Zoë”");
    assert.deepEqual(rounded(pointsOf(trace)), rounded(ridden));
  });
  it("is the same without times, and at the edges of the Earth", async () => {
    const edge = [[89.999999, 179.999999], [-90, -180], [0, 0], [0.000001, -0.000001]].map(([latitude, longitude]) => ({ latitude: latitude!, longitude: longitude!, accuracy_m: null, at_ms: null }));
    const again = await read(writeGpx([traceOf(edge)], START_MS));
    assert.deepEqual(again.points, edge);
    assert.match(writeGpx([traceOf([{ ...edge[0]!, longitude: 180 }])], START_MS), /lon="-180\.000000"/);
  });
  it("holds all traces of an outing, with a gap between", async () => {
    const traces = [0, 100].map((from) => traceOf(ride(20, (s) => [s, 0], () => 0, { from })));
    const found = await read(writeGpx(traces, START_MS));
    assert.deepEqual([found.count, found.points.findIndex((each) => each.breaks)], [42, 21]);
  });
});

describe("a long trace", () => {
  it("is thinned to what an entry takes, gaps kept, and says how many points are left out", () => {
    const long = ride(9999, (s) => [6.7 * s, 0], () => 0).map((each, n) => (n === 5003 ? { ...each, breaks: true } : each));
    const trace = traceOf(long);
    assert.equal(trace.latitude_udeg.length + trace.left_out, 10_000);
    assert.ok(trace.latitude_udeg.length <= MOST_POINTS && trace.latitude_udeg.length > MOST_POINTS / 2);
    const kept = pointsOf(trace);
    assert.deepEqual([kept[0]!.at_ms, kept.at(-1)!.at_ms], [long[0]!.at_ms, long.at(-1)!.at_ms]);
    assert.deepEqual(trace.breaks.length, 1);
    assert.ok(Math.abs(measure(kept).moved!.speed_mpm - 402) < 2);
  });
  it("fits the limit whatever numbers it holds", () => {
    const wild = Array.from({ length: 5000 }, (_, n) => ({ latitude: n % 2 ? -89.123456 : 89.654321, longitude: n % 2 ? -179.123456 : 179.654321, accuracy_m: 99_999, at_ms: START_MS + n * 3_600_000 * 24 * 11 }));
    assert.ok(JSON.stringify(traceOf(wild)).length < 62_000);
  });
});
