// A track as it is typed, and the body it makes.

import { type Calibration, MEASURED_BY, type MeasuredBy, type Track, type TrackInput } from "../../entries/bodies.ts";
import { calibrate, putRight } from "../../pace/calibration.ts";
import { defaultDistanceU } from "../../pace/speed.ts";
import { parseDistance } from "../../units/index.ts";

export type DistanceUnit = "m" | "yd";

export interface TrackDraft {
  name: string;
  /** As typed: flag to flag, or with a calibration what its instrument read. */
  distance: string;
  unit: DistanceUnit;
  measured_by: MeasuredBy;
  field_id: string | null;
  notes: string;
  calibration_id: string | null;
  /** The person's own ± in m, as typed; empty takes the one assumed. */
  own_u: string;
  /** Flags on the way in m from the first, as typed: “100, 300”. */
  flags: string;
}

/** What was measured: metres, and their standard uncertainty where one is known. */
export interface Measured {
  distance_m: number;
  distance_u_m: number | null;
}

export const SHORTEST_M = 10;
export const LONGEST_M = 10_000;
const MOST_FLAGS = 50;
const METRES_IN_YARD = 0.9144; // exactly, by the international agreement of 1959

export function blankTrack(field_id: string | null, unit: DistanceUnit): TrackDraft {
  return { name: "", distance: "", unit, measured_by: "wheel", field_id, notes: "", calibration_id: null, own_u: "", flags: "" };
}

const short = (value: number): string => String(Math.round(value * 100) / 100);

/** A saved track as a draft, its distance in the unit the person likes. A reading stays in the instrument's metres. */
export function draftOf(track: Track, liked: DistanceUnit): TrackDraft {
  const { name, measured_by, field_id, notes, calibration_id, reading_m, distance_m, distance_u_m, flags_m } = track;
  const read = calibration_id !== null && reading_m !== null;
  const unit = read ? "m" : liked;
  return {
    name, measured_by, field_id, unit, notes: notes ?? "", flags: flags_m.map(short).join(", "),
    calibration_id: read ? calibration_id : null, own_u: read || distance_u_m === null ? "" : String(distance_u_m),
    distance: short(read ? reading_m : unit === "m" ? distance_m : distance_m / METRES_IN_YARD),
  };
}

/** A draft as it was kept while typing; what does not fit falls back to `otherwise`. */
export function readDraft(text: string, otherwise: TrackDraft): TrackDraft {
  try {
    const kept = { ...otherwise, ...(JSON.parse(text) as Partial<TrackDraft>) };
    return MEASURED_BY.includes(kept.measured_by) ? kept : otherwise;
  } catch {
    return otherwise;
  }
}

/** Metres as typed; null where it is no distance a track can have. */
export function metresOf(draft: TrackDraft): number | null {
  const plain = /[a-z]\s*$/i.test(draft.distance) ? draft.distance : `${draft.distance}${draft.calibration_id === null ? draft.unit : "m"}`;
  const metres = parseDistance(plain);
  return metres !== null && metres >= SHORTEST_M && metres <= LONGEST_M ? metres : null;
}

/** Standard uncertainty of the distance in m: the one known, else the one assumed for how it was measured. */
export function distanceU(metres: number, known: Pick<Track, "measured_by" | "distance_u_m">): number {
  return known.distance_u_m ?? defaultDistanceU(metres, known.measured_by);
}

/** A number as typed, with a point or a comma; NaN where it is none. */
export const typed = (text: string): number => (text.trim() === "" ? Number.NaN : Number(text.trim().replace(",", ".")));

// an own ± as typed: null where none is, NaN where it is none
function ownU({ own_u }: TrackDraft): number | null {
  return own_u.trim() === "" ? null : typed(own_u);
}

/** What the draft measures, a calibrated reading put right; null while that is no distance. */
export function measuredOf(draft: TrackDraft, calibration: Calibration | null): Measured | null {
  const metres = metresOf(draft);
  if (metres === null) return null;
  if (calibration === null) return { distance_m: metres, distance_u_m: ownU(draft) };
  const right = putRight(metres, calibrate(calibration));
  if (right.distance_m < SHORTEST_M || right.distance_m > LONGEST_M) return null;
  return { distance_m: Math.round(100 * right.distance_m) / 100, distance_u_m: Math.round(1000 * right.distance_u_m) / 1000 };
}

/** The flags as typed, in m; null where they do not rise from the first flag to the last. */
export function flagsOf(draft: TrackDraft, distance_m: number): number[] | null {
  const flags = (draft.flags.match(/[\d.]+/g) ?? []).map(Number);
  const rising = flags.every((at, n) => at > (flags[n - 1] ?? 0) && at < distance_m);
  return rising && flags.length <= MOST_FLAGS ? flags : null;
}

export type Trouble = "need_name" | "need_distance" | "need_u" | "need_flags";

/** What the draft still lacks; none when it can be saved. */
export function troubles(draft: TrackDraft, calibration: Calibration | null = null): Trouble[] {
  const [lacking, measured]: [Trouble[], Measured | null] = [[], measuredOf(draft, calibration)];
  const u = measured?.distance_u_m ?? 0;
  if (draft.name.trim() === "") lacking.push("need_name");
  if (measured === null) lacking.push("need_distance");
  if (!(u >= 0 && u <= 1000)) lacking.push("need_u");
  if (measured !== null && flagsOf(draft, measured.distance_m) === null) lacking.push("need_flags");
  return lacking;
}

/** The body to save, or null while something is lacking. */
export function trackBody(draft: TrackDraft, calibration: Calibration | null = null): Required<TrackInput> | null {
  const measured = measuredOf(draft, calibration);
  if (measured === null || troubles(draft, calibration).length > 0) return null;
  return {
    name: draft.name.trim(),
    ...measured,
    measured_by: calibration?.measured_by ?? draft.measured_by,
    calibration_id: calibration ? draft.calibration_id : null,
    reading_m: calibration ? metresOf(draft) : null,
    flags_m: flagsOf(draft, measured.distance_m) ?? [],
    field_id: draft.field_id,
    notes: draft.notes.trim() === "" ? null : draft.notes.trim(),
  };
}
