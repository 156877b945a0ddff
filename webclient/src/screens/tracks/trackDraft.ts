// A track as it is typed, and the body it makes.

import { MEASURED_BY, type MeasuredBy, type Track, type TrackInput } from "../../entries/bodies.ts";
import { defaultDistanceU } from "../../pace/speed.ts";
import { parseDistance } from "../../units/index.ts";

export type DistanceUnit = "m" | "yd";

export interface TrackDraft {
  name: string;
  distance: string;
  unit: DistanceUnit;
  measured_by: MeasuredBy;
  field_id: string | null;
  notes: string;
  /** Kept from the track that is edited; the form itself offers no own figure. */
  distance_u_m: number | null;
}

export const SHORTEST_M = 10;
export const LONGEST_M = 10_000;
const METRES_IN_YARD = 0.9144; // exactly, by the international agreement of 1959

export function blankTrack(field_id: string | null, unit: DistanceUnit): TrackDraft {
  return { name: "", distance: "", unit, measured_by: "wheel", field_id, notes: "", distance_u_m: null };
}

/** A saved track as a draft, its distance in the unit the person likes. */
export function draftOf(track: Track, unit: DistanceUnit): TrackDraft {
  const distance = unit === "m" ? track.distance_m : track.distance_m / METRES_IN_YARD;
  return { ...track, notes: track.notes ?? "", unit, distance: String(Math.round(distance * 100) / 100) };
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
  const plain = /[a-z]\s*$/i.test(draft.distance) ? draft.distance : `${draft.distance}${draft.unit}`;
  const metres = parseDistance(plain);
  return metres !== null && metres >= SHORTEST_M && metres <= LONGEST_M ? metres : null;
}

/** Standard uncertainty of the distance in m: the own figure, else the one assumed for how it was measured. */
export function distanceU(metres: number, draft: Pick<TrackDraft, "measured_by" | "distance_u_m">): number {
  return draft.distance_u_m ?? defaultDistanceU(metres, draft.measured_by);
}

export type Trouble = "need_name" | "need_distance";

/** What the draft still lacks; none when it can be saved. */
export function troubles(draft: TrackDraft): Trouble[] {
  const lacking: Trouble[] = [];
  if (draft.name.trim() === "") lacking.push("need_name");
  if (metresOf(draft) === null) lacking.push("need_distance");
  return lacking;
}

// An own figure belongs to the stretch it was found for: another distance or another way of measuring drops it.
function ownFigure(draft: TrackDraft, metres: number, before: Track | null): number | null {
  const same = before !== null && Math.abs(before.distance_m - metres) < 0.01 && before.measured_by === draft.measured_by;
  return same ? draft.distance_u_m : null;
}

/** The body to save, or null while something is lacking. `before`: the track that is edited. */
export function trackBody(draft: TrackDraft, before: Track | null = null): Required<TrackInput> | null {
  const metres = metresOf(draft);
  if (metres === null || troubles(draft).length > 0) return null;
  return {
    name: draft.name.trim(),
    distance_m: metres,
    measured_by: draft.measured_by,
    distance_u_m: ownFigure(draft, metres, before),
    field_id: draft.field_id,
    notes: draft.notes.trim() === "" ? null : draft.notes.trim(),
  };
}
