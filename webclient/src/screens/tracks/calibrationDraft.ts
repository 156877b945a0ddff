// A calibration as it is typed: an instrument, the taped stretch, and what was read each time along it.

import { type Calibration, type CalibrationInput, MEASURED_BY, type MeasuredBy } from "../../entries/bodies.ts";
import { type Calibrated, calibrate, FEWEST_WALKS } from "../../pace/calibration.ts";
import { typed } from "./trackDraft.ts";

export interface CalibrationDraft {
  instrument: string;
  measured_by: MeasuredBy;
  taped: string;
  walks: string[];
  step: string;
  note: string;
}

export const INSTRUMENTS = ["wheel", "paces", "phone"] as const satisfies readonly MeasuredBy[];
export const MOST_WALKS = 10;
/** The smallest step shown, in m: a wheel's 10 cm, a whole pace, a phone's metre. */
export const STEPS_M = ["0.01", "0.1", "1"] as const;
const STEP_OF: Partial<Record<MeasuredBy, string>> = { paces: "1", phone: "1" };

export const BLANK: CalibrationDraft = { instrument: "", measured_by: "wheel", taped: "50", walks: ["", "", ""], step: "0.1", note: "" };

export function draftOf(body: Calibration): CalibrationDraft {
  const { instrument, measured_by, taped_distance_m, walked_m, reading_step_m, note } = body;
  return { instrument, measured_by, taped: String(taped_distance_m), walks: walked_m.map(String), step: String(reading_step_m), note: note ?? "" };
}

/** A draft as it was kept while typing; what does not fit falls back to `otherwise`. */
export function readDraft(text: string, otherwise: CalibrationDraft): CalibrationDraft {
  try {
    const kept = { ...otherwise, ...(JSON.parse(text) as Partial<CalibrationDraft>) };
    return MEASURED_BY.includes(kept.measured_by) && Array.isArray(kept.walks) ? kept : otherwise;
  } catch {
    return otherwise;
  }
}

/** Another sort of instrument shows other steps. */
export function withInstrument(draft: CalibrationDraft, measured_by: MeasuredBy): CalibrationDraft {
  return { ...draft, measured_by, step: STEP_OF[measured_by] ?? "0.1" };
}

export type Trouble = "need_instrument" | "need_taped" | "need_walks";

const within = (value: number, least: number, most: number): boolean => value >= least && value <= most;

/** The readings typed so far, in m. */
export function walkedOf({ walks }: CalibrationDraft): number[] {
  return walks.filter((walk) => walk.trim() !== "").map(typed);
}

export function troubles(draft: CalibrationDraft): Trouble[] {
  const lacking: Trouble[] = [];
  const walked = walkedOf(draft);
  if (draft.instrument.trim() === "") lacking.push("need_instrument");
  if (!within(typed(draft.taped), 10, 1000)) lacking.push("need_taped");
  if (walked.length < FEWEST_WALKS || !walked.every((reading) => within(reading, 1, 10_000))) lacking.push("need_walks");
  return lacking;
}

/** The body to save, or null while something is lacking. `before`: the calibration that is edited. */
export function calibrationBody(draft: CalibrationDraft, date: string, before: Calibration | null = null): Required<CalibrationInput> | null {
  if (troubles(draft).length > 0) return null;
  return {
    instrument: draft.instrument.trim(), measured_by: draft.measured_by, taped_distance_m: typed(draft.taped), taped_u_m: before?.taped_u_m ?? null,
    walked_m: walkedOf(draft), reading_step_m: Number(draft.step), date: before?.date ?? date, note: draft.note.trim() || null,
  };
}

/** What is known so far; null while the walks do not make a factor. */
export function factorOf(draft: CalibrationDraft): Calibrated | null {
  const body = calibrationBody({ ...draft, instrument: "x" }, "");
  return body && calibrate(body);
}

/** A factor that no wheel or phone has: a slip of the pen, or yards read as metres. A pace may be any length. */
export function isOdd({ measured_by }: CalibrationDraft, { factor }: Calibrated): boolean {
  return measured_by !== "paces" && !within(factor, 0.85, 1.15);
}
