// A standing as the server sends it and the phone keeps it: docs/protocol.md describes the shape.

export const STATES = ["shown", "building", "untried", "shaky", "gone_stale", "on_hold"] as const;
export type FindingState = (typeof STATES)[number];

export const FINDING_PHASES = [
  "cross_country", "pace", "show_jumping", "dressage", "horse", "rider", "results", "word",
] as const;
export type FindingPhase = (typeof FINDING_PHASES)[number];

/** One plain sentence, with its code and values for other languages and units. */
export interface Reason {
  code: string;
  values: Record<string, unknown>;
  text: string;
}

export interface EvidenceLine {
  record_id: string;
  kind: string;
  local_date: string;
  label: string;
  outcome: string | null;
  weight: number | null;
  fence_id?: string | null;
  outing_id?: string | null;
}

export interface Finding {
  requirement_id: string;
  phase: FindingPhase;
  title: string;
  state: FindingState;
  required: boolean;
  reasons: Reason[];
  needs: Reason[];
  numbers: Record<string, unknown>;
  evidence: EvidenceLine[];
  explanation: string;
}

export interface NextStep {
  text: string;
  requirement_id: string;
  fence_ids: string[];
  presentation: Record<string, string>;
  times: number | null;
}

export interface Standing {
  logbook_number: number;
  horse_id: string;
  rulebook_id: string;
  level_id: string;
  level_name: string;
  level_order: number;
  as_of: string;
  summary: { counts: Record<FindingState, number>; required: number; complete: boolean; sentence: string };
  findings: Finding[];
  next: NextStep[];
  forecast: unknown;
  cautions: string[];
}
