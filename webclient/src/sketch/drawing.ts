// From metres to the picture: scale, edges, the scale bar.

import type { System } from "../units/lengths.ts";
import type { Spot } from "./layout.ts";

export interface Drawing {
  width: number;
  height: number;
  /** Pixels per metre. */
  scale: number;
  /** North is up. */
  at: (spot: { x: number; y: number }) => { x: number; y: number };
  back: (at: { x: number; y: number }) => { x: number; y: number };
}

const EDGE = 36;
/** A single fence, or some in one spot, still get a field around them. */
const LEAST_M = 60;

/** A picture `width` wide that shows every spot with its circle of doubt; between half as high and a half higher. */
export function draw(spots: readonly Spot[], width: number): Drawing {
  const [west, east] = ends(spots.flatMap(({ x, accuracy_m }) => [x - (accuracy_m ?? 0), x + (accuracy_m ?? 0)]));
  const [south, north] = ends(spots.flatMap(({ y, accuracy_m }) => [y - (accuracy_m ?? 0), y + (accuracy_m ?? 0)]));
  const [across, up] = [east - west, north - south];
  const height = Math.round(Math.min(1.25, Math.max(0.6, up / across)) * width);
  const scale = Math.min((width - 2 * EDGE) / across, (height - 2 * EDGE) / up);
  const [middle_x, middle_y] = [(west + east) / 2, (south + north) / 2];
  return {
    width, height, scale,
    at: ({ x, y }) => ({ x: width / 2 + (x - middle_x) * scale, y: height / 2 - (y - middle_y) * scale }),
    back: ({ x, y }) => ({ x: middle_x + (x - width / 2) / scale, y: middle_y - (y - height / 2) / scale }),
  };
}

function ends(values: number[]): [number, number] {
  const [least, most] = values.length ? [Math.min(...values), Math.max(...values)] : [0, 0];
  const add = Math.max(0, LEAST_M - (most - least)) / 2;
  return [least - add, most + add];
}

const YARD_M = 0.9144;

/** The longest round length (1, 2 or 5 with zeros) in m or yd that takes at most `most_m`; in m. */
export function roundLength(most_m: number, system: System): number {
  const unit = system === "metric" ? 1 : YARD_M;
  const power = 10 ** Math.floor(Math.log10(most_m / unit));
  const times = [5, 2, 1].find((each) => each * power * unit <= most_m) ?? 1;
  return times * power * unit;
}

/** The nearest of these to a tap, if any lies within `reach` pixels. */
export function nearest(spots: ReadonlyMap<string, Spot>, drawing: Drawing, tap: { x: number; y: number }, reach: number): string | null {
  const away = [...spots].map(([id, spot]) => ({ id, far: Math.hypot(drawing.at(spot).x - tap.x, drawing.at(spot).y - tap.y) }));
  const found = away.sort((one, other) => one.far - other.far)[0];
  return found && found.far <= reach ? found.id : null;
}
