// Traces as a GPX 1.1 file (topografix.com): one track a trace, one segment a stretch without a gap, times in UTC.
// The phone's radius, for which GPX has no element, goes into an extension of our own.

import type { Trace } from "../entries/bodies.ts";
import { type Point, pointsOf } from "../location/points.ts";

const OPENING = `<?xml version="1.0" encoding="UTF-8"?>
<gpx version="1.1" creator="Fieldtally" xmlns="http://www.topografix.com/GPX/1/1" xmlns:f="urn:fieldtally:trace:1">
`;

const ESCAPES: Record<string, string> = { "&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;" };

/** XML 1.0 knows no control characters but tab and new lines. */
function escaped(text: string): string {
  return text.replace(/[^\t\n\r\x20-\ud7ff\ue000-\ufffd\u{10000}-\u{10ffff}]/gu, "").replace(/[&<>"]/g, (letter) => ESCAPES[letter]!);
}

const iso = (at_ms: number): string => new Date(at_ms).toISOString();

function pointText({ latitude, longitude, at_ms, accuracy_m }: Point): string {
  const east = longitude === 180 ? -180 : longitude; // GPX ends just before 180
  const time = at_ms === null ? "" : `<time>${iso(at_ms)}</time>`;
  const accuracy = accuracy_m === null ? "" : `<extensions><f:accuracy_m>${accuracy_m}</f:accuracy_m></extensions>`;
  return `<trkpt lat="${latitude.toFixed(6)}" lon="${east.toFixed(6)}">${time}${accuracy}</trkpt>`;
}

function trackText(trace: Trace): string {
  const points = pointsOf(trace).map((point) => (point.breaks ? "</trkseg>\n<trkseg>\n" : "") + pointText(point));
  const name = trace.name === null ? "" : `<name>${escaped(trace.name)}</name>`;
  return `<trk>${name}<trkseg>\n${points.join("\n")}\n</trkseg></trk>\n`;
}

/** The whole file; `at_ms` is when it was written. */
export function writeGpx(traces: Trace[], at_ms: number): string {
  return `${OPENING}<metadata><time>${iso(at_ms)}</time></metadata>\n${traces.map(trackText).join("")}</gpx>\n`;
}
