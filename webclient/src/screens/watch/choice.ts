// What was chosen before a start, kept on this phone for the next one, and the plan it makes.

import type { Start, TimedCanter, Track } from "../../entries/bodies.ts";
import type { Plan } from "../../pace/run.ts";

export interface Choice {
  outing_id: string | null;
  /** For a new outing, where there is none today. */
  horse_id: string | null;
  track_id: string | null;
  target_speed_mpm: number | null;
  level_id: string | null;
  start: Start;
  /** Of a standing start: seconds from the tap to the start; null starts with the tap. */
  countdown_s: number | null;
  over_fences: boolean;
  /** The first canter of the set that is repeated; any other choice begins a new one. */
  set_id: string | null;
}

export const NOTHING_CHOSEN: Choice = {
  outing_id: null,
  horse_id: null,
  track_id: null,
  target_speed_mpm: null,
  level_id: null,
  start: "flying",
  countdown_s: null,
  over_fences: false,
  set_id: null,
};

export const COUNTDOWNS_S = [3, 5, 10] as const;

export const SLOWEST_TARGET_MPM = 150;
export const FASTEST_TARGET_MPM = 750;

interface Known<Body> {
  record_id: string;
  body: Body;
}

/** A remembered choice, as far as it is one: it may have been written by another version. */
export function recalled(kept: Partial<Choice> | null): Choice {
  const choice = { ...NOTHING_CHOSEN, ...kept };
  const target = choice.target_speed_mpm;
  const usable = typeof target === "number" && target >= SLOWEST_TARGET_MPM && target <= FASTEST_TARGET_MPM;
  return { ...choice, target_speed_mpm: usable ? target : null };
}

/** The set-up of a canter once more: on its day it goes on with its set, later it is a new canter. */
export function repeatOf({ record_id, body }: Known<TimedCanter>, sameDay: boolean): Partial<Choice> {
  const { outing_id, track_id, target_speed_mpm, level_id, start, countdown_s, over_fences, set_id } = body;
  const set = sameDay ? { outing_id, set_id: set_id ?? record_id } : { outing_id: null, set_id: null };
  return { track_id, target_speed_mpm, level_id, start, countdown_s, over_fences, ...set };
}

/** The tracks of a field first, then the others; each group by name. */
export function tracksInOrder(tracks: Known<Track>[], field_id: string | null): Known<Track>[] {
  const here = (track: Known<Track>): number => (field_id !== null && track.body.field_id === field_id ? 0 : 1);
  return [...tracks].sort((one, other) => here(one) - here(other) || one.body.name.localeCompare(other.body.name));
}

/** The plan of a choice; null while the track or the outing is missing. */
export function planOf(choice: Choice, track: Known<Track> | undefined, outing_id: string | null): Plan | null {
  if (track === undefined || outing_id === null) return null;
  const { distance_m, distance_u_m, measured_by, flags_m } = track.body;
  return {
    outing_id,
    track_id: track.record_id,
    distance_m,
    distance_u_m,
    measured_by,
    target_speed_mpm: choice.target_speed_mpm,
    level_id: choice.level_id,
    start: choice.start,
    countdown_s: choice.start === "standing" ? choice.countdown_s : null,
    set_id: choice.set_id,
    flags_m,
    over_fences: choice.over_fences,
  };
}
