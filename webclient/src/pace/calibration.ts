// What an instrument's reading is worth, from walking it several times along a taped stretch: the twin of
// server/fieldtally/trade/calibration.py, which names the sources (JCGM 100:2008). Both run
// fixtures/contract/calibration.json.

import type { CalibrationInput } from "../entries/bodies.ts";
import { aboveZero, notBelowZero } from "./badInput.ts";
import { defaultDistanceU } from "./speed.ts";

export const FEWEST_WALKS = 3;

/** `factor` times a reading is metres. `scatter_m` is the standard deviation of one walk over `mean_m`. */
export interface Calibrated {
  factor: number;
  factor_u: number;
  mean_m: number;
  scatter_m: number;
  reading_step_m: number;
}

export type Walks = Pick<CalibrationInput, "taped_distance_m" | "walked_m" | "taped_u_m" | "reading_step_m">;

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);

/** Mean and sample standard deviation (JCGM 100:2008, 4.2.1 and 4.2.2). */
export function meanAndScatter(values: readonly number[]): { mean: number; scatter: number } {
  const mean = sum(values) / values.length;
  return { mean, scatter: Math.sqrt(sum(values.map((value) => (value - mean) ** 2)) / (values.length - 1)) };
}

const rectangularU = (width: number): number => width / Math.sqrt(12);

/** The factor of an instrument; throws BadInput for fewer than three walks, or anything that is no length. */
export function calibrate({ taped_distance_m, walked_m, taped_u_m = null, reading_step_m = 0 }: Walks): Calibrated {
  aboveZero("taped_distance_m", taped_distance_m);
  for (const reading of walked_m) aboveZero("walked_m", reading);
  aboveZero("walked_m", walked_m.length - FEWEST_WALKS + 1);
  const taped_u = notBelowZero("taped_u_m", taped_u_m ?? defaultDistanceU(taped_distance_m, "tape"));
  const { mean, scatter } = meanAndScatter(walked_m);
  const read_u = Math.hypot(scatter / Math.sqrt(walked_m.length), rectangularU(notBelowZero("reading_step_m", reading_step_m)));
  const factor = taped_distance_m / mean;
  const factor_u = factor * Math.hypot(taped_u / taped_distance_m, read_u / mean);
  return { factor, factor_u, mean_m: mean, scatter_m: scatter, reading_step_m };
}

/** A single reading in metres as the tape would have it. It scatters as one walk did, in proportion to its length. */
export function putRight(readingM: number, by: Calibrated): { distance_m: number; distance_u_m: number } {
  aboveZero("reading_m", readingM);
  const walk_u = Math.hypot((by.scatter_m / by.mean_m) * readingM, rectangularU(by.reading_step_m));
  const distance_m = by.factor * readingM;
  return { distance_m, distance_u_m: distance_m * Math.hypot(by.factor_u / by.factor, walk_u / readingM) };
}
