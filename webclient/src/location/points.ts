// The points of a trace as the maths and the file formats want them, and as one entry keeps them: whole
// millionths of a degree (0.11 m), each as the difference from the one before, thinned out to what fits.

import type { Trace, TraceInput } from "../entries/bodies.ts";

export interface Point {
  latitude: number;
  longitude: number;
  /** Radius in m that the phone gave; null where nobody said. */
  accuracy_m: number | null;
  /** Since 1970; null in a course that was drawn, not ridden. A trace has times throughout or not at all. */
  at_ms: number | null;
  /** The first point after a gap: nothing leads here from the one before. */
  breaks?: boolean;
}

export const MOST_POINTS = 2000;
/** The limit of an entry is 64 KiB; its envelope and other fields take less than the rest. */
const MOST_CHARACTERS = 60_000;
const DEGREE = 1e6;

/** Where it comes from and what it belongs to. */
export type TraceOf = Pick<TraceInput, "outing_id" | "source" | "canter_id" | "name">;

/** The body of these points, at least one; `left_out` says how many of the `count` that there were do not fit. */
export function bodyOf(points: Point[], of: TraceOf, count = points.length): TraceInput {
  for (let every = everyFor(points.length); ; every++) {
    const kept = thin(points.length, every, (n) => points[n]!.breaks === true).map(({ n, breaks }) => ({ ...points[n]!, breaks }));
    const body = { ...of, ...lists(kept), left_out: count - kept.length };
    if (kept.length <= MOST_POINTS && JSON.stringify(body).length <= MOST_CHARACTERS) return body;
  }
}

/** One of how many points a trace has room for. */
export function everyFor(count: number): number {
  return count <= MOST_POINTS ? 1 : Math.ceil(count / (MOST_POINTS - 1));
}

interface Kept {
  n: number;
  breaks: boolean;
}

/** One place of each `every`, the last one always, and the gaps where they were. */
export function thin(count: number, every: number, breaksAt: (n: number) => boolean): Kept[] {
  const kept: Kept[] = [];
  let breaks = false;
  for (let n = 0; n < count; n++) {
    breaks ||= breaksAt(n);
    if (n % every && n < count - 1) continue;
    kept.push({ n, breaks });
    breaks = false;
  }
  return kept;
}

const whole = (points: Point[], of: (point: Point) => number): number[] => points.map((point) => Math.round(of(point)));
const steps = (values: number[]): number[] => values.map((value, n) => (n === 0 ? value : value - values[n - 1]!));

function lists(points: Point[]) {
  const started_at_ms = points[0]!.at_ms === null ? null : Math.round(points[0]!.at_ms);
  const said = points.every((point) => point.accuracy_m !== null);
  return {
    started_at_ms,
    dt_ms: started_at_ms === null ? [] : steps(whole(points, (point) => point.at_ms! - started_at_ms)),
    latitude_udeg: steps(whole(points, (point) => point.latitude * DEGREE)),
    longitude_udeg: steps(whole(points, (point) => point.longitude * DEGREE)),
    accuracy_m: said ? whole(points, (point) => Math.min(100_000, Math.ceil(point.accuracy_m!))) : [],
    breaks: points.flatMap((point, n) => (point.breaks && n > 0 ? [n] : [])),
  };
}

/** The points of a trace, as they were but for the rounding. */
export function pointsOf(trace: Trace): Point[] {
  let [at_ms, latitude, longitude] = [trace.started_at_ms, 0, 0];
  const breaks = new Set(trace.breaks);
  return trace.latitude_udeg.map((step, n) => {
    latitude += step;
    longitude += trace.longitude_udeg[n]!;
    if (at_ms !== null) at_ms += trace.dt_ms[n]!;
    return { latitude: latitude / DEGREE, longitude: longitude / DEGREE, accuracy_m: trace.accuracy_m[n] ?? null, at_ms, ...(breaks.has(n) && { breaks: true }) };
  });
}
