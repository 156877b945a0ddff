// Where the fences of a field lie beside each other: metres east (x) and north (y) of the middle of those a phone
// has located. Those put by hand on a sketch have metres of their own; they are tied to the ground by every fence
// that has both. Equirectangular about the middle: over a field of 2 km that is some decimetres off, far less than
// any phone.

import { metresPerDegree, offsetOf } from "../location/earth.ts";
import type { Position } from "../recording/position.ts";

export interface Spot {
  x: number;
  y: number;
  /** Radius at 95 % in m as the phone gave it; null where it was put there by hand. */
  accuracy_m: number | null;
}

interface Ground {
  latitude: number;
  longitude: number;
}

export interface Layout {
  spots: Map<string, Spot>;
  /** The middle on the ground; null where no phone has located any fence. */
  middle: Ground | null;
  /** From the sketch's own metres to these; null where nothing ties the two together. */
  shift: { x: number; y: number } | null;
}

interface Standing {
  record_id: string;
  body: Position;
}

export function layOut(fences: readonly Standing[]): Layout {
  const middle = middleOf(fences.flatMap(({ body }) => groundOf(body) ?? []));
  const spots = new Map<string, Spot>();
  for (const { record_id, body } of fences) {
    const ground = groundOf(body);
    if (ground) spots.set(record_id, { ...offsetOf(middle!, ground), accuracy_m: body.position_accuracy_m });
  }
  const shift = middle ? tieOf(fences, spots) : { x: 0, y: 0 };
  for (const { record_id, body } of fences) {
    const drawn = sketched(body);
    if (drawn && shift && !spots.has(record_id)) spots.set(record_id, { x: drawn.x + shift.x, y: drawn.y + shift.y, accuracy_m: null });
  }
  return { spots, middle, shift };
}

function groundOf({ latitude, longitude }: Position): Ground | null {
  return latitude === null || longitude === null ? null : { latitude, longitude };
}

function sketched({ sketch_east_m, sketch_north_m }: Position): { x: number; y: number } | null {
  return sketch_east_m === null || sketch_north_m === null ? null : { x: sketch_east_m, y: sketch_north_m };
}

const mean = (values: number[]): number => values.reduce((sum, each) => sum + each, 0) / values.length;

// means of offsets from the first, so that no meridian splits a field
function middleOf(places: Ground[]): Ground | null {
  const first = places[0];
  if (!first) return null;
  const away = places.map((place) => offsetOf(first, place));
  return groundAt(first, mean(away.map(({ x }) => x)), mean(away.map(({ y }) => y)));
}

function tieOf(fences: readonly Standing[], spots: Map<string, Spot>): Layout["shift"] {
  const ties = fences.flatMap(({ record_id, body }) => {
    const [drawn, spot] = [sketched(body), spots.get(record_id)];
    return drawn && spot ? { x: spot.x - drawn.x, y: spot.y - drawn.y } : [];
  });
  return ties.length ? { x: mean(ties.map(({ x }) => x)), y: mean(ties.map(({ y }) => y)) } : null;
}

const rounded = (value: number, scale: number): number => Math.round(value * scale) / scale;

/** The place so many m east and north of another; to 1e-7 degrees, about a centimetre. */
function groundAt({ latitude, longitude }: Ground, x: number, y: number): Ground {
  const { north, east } = metresPerDegree(latitude + y / 2 / 111_000);
  return { latitude: rounded(latitude + y / north, 1e7), longitude: rounded(longitude + x / east, 1e7) };
}

/** Where a place on the ground lies in the layout; null where no phone has located any fence. */
export function spotOf({ middle }: Layout, place: Ground): { x: number; y: number } | null {
  return middle && offsetOf(middle, place);
}

/** The position of a fence put by hand at (x, y). What the phone had said of it no longer holds, so its accuracy goes. */
export function putAt(position: Position, { middle, shift }: Layout, spot: Spot | undefined, x: number, y: number): Position {
  const drawn = sketched(position);
  const onSketch = !middle || (drawn !== null && shift !== null);
  const ground = middle && (groundOf(position) || !onSketch) ? groundAt(middle, x, y) : null;
  const by = spot && drawn ? { x: drawn.x + x - spot.x, y: drawn.y + y - spot.y } : shift && { x: x - shift.x, y: y - shift.y };
  return {
    latitude: ground?.latitude ?? null, longitude: ground?.longitude ?? null, position_accuracy_m: null,
    sketch_east_m: onSketch ? rounded(by!.x, 10) : position.sketch_east_m, sketch_north_m: onSketch ? rounded(by!.y, 10) : position.sketch_north_m,
  };
}

export const COMPASS = ["n", "ne", "e", "se", "s", "sw", "w", "nw"] as const;

/** How far and which way from one spot to another; the bearing in degrees from north, clockwise. */
export function wayTo(from: { x: number; y: number }, to: { x: number; y: number }): { distance_m: number; bearing_deg: number; compass: (typeof COMPASS)[number] } {
  const [x, y] = [to.x - from.x, to.y - from.y];
  const bearing_deg = (Math.atan2(x, y) * 180 / Math.PI + 360) % 360;
  return { distance_m: Math.hypot(x, y), bearing_deg, compass: COMPASS[Math.round(bearing_deg / 45) % 8]! };
}
