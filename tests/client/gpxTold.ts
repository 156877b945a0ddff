// What the client makes of GPX files and of traces, as JSON for test_gpx.py: {files: [text], traces: [body]} on its
// standard input, {read: [what was read], written: text} on its output.

import { readFileSync } from "node:fs";

import { completeBody } from "../../webclient/src/entries/bodies.ts";
import { readGpx } from "../../webclient/src/gpx/read.ts";
import { writeGpx } from "../../webclient/src/gpx/write.ts";
import { bodyOf } from "../../webclient/src/location/points.ts";

const { files, traces, at_ms } = JSON.parse(readFileSync(0, "utf8"));
const read = [];
for (const text of files) {
  const { name, points, count, length_m } = await readGpx([text]);
  const [first, last] = [points[0]!.at_ms, points.at(-1)!.at_ms];
  read.push({ name, count, length_m, first, last, body: bodyOf(points, { outing_id: "", source: "file" }) });
}
const written = writeGpx(traces.map((body: never) => completeBody("trace", body)), at_ms);
console.log(JSON.stringify({ read, written }));
