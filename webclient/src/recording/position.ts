// Where a fence stands: by the phone's location (WGS 84), or put by hand on a sketch that no phone has located.

import type { Fence } from "../entries/bodies.ts";

export type Position = Pick<Fence, "latitude" | "longitude" | "position_accuracy_m" | "sketch_east_m" | "sketch_north_m">;

export const NO_POSITION: Position = { latitude: null, longitude: null, position_accuracy_m: null, sketch_east_m: null, sketch_north_m: null };

export function positionOf({ latitude, longitude, position_accuracy_m, sketch_east_m, sketch_north_m }: Position): Position {
  return { latitude, longitude, position_accuracy_m, sketch_east_m, sketch_north_m };
}
