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

/** One number of a requirement as a coach changed it, oldest first; `value` null put the default back. */
export interface BarChanged {
  quantity: string;
  default: number | null;
  value: number | null;
  reason: string;
  record_id: string;
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
  /** Null where the level lies so far above the present one that the lines stay on the server. */
  evidence: EvidenceLine[] | null;
  explanation?: string;
  /** The same sentence by sentence, for other languages. */
  worked_out?: Pick<Reason, "code" | "values">[];
  bar?: { numbers: Record<string, number>; source: string; changes?: BarChanged[] };
}

export interface NextStep {
  text: string;
  requirement_id: string;
  fence_ids: string[];
  presentation: Record<string, string>;
  times: number | null;
}

export interface Likely {
  expected: number;
  low: number;
  high: number;
}

/** The chances of one level. */
export interface Chances {
  clear_chance: number;
  clear_low: number;
  clear_high: number;
  elimination_chance: number;
  jumping_penalties: { penalties: number; chance: number }[];
  total: Likely | null;
}

/** What a typical course of the level might bring; where `spoken` is false only `text` and `silence` are there. */
export interface Forecast extends Partial<Chances> {
  spoken: boolean;
  text: string;
  silence?: Reason;
  explanation?: string;
  worked_out?: Pick<Reason, "code" | "values">[];
  phases?: Partial<Record<"dressage" | "show_jumping" | "time", Likely | null>>;
  /** Absent at the present level itself. */
  present_level?: Chances & { level_id: string; level_name: string };
}

export interface PlanStep {
  part: "warm_up" | "work" | "end_on";
  /** Null, and the name empty, where no fence of the field will do. */
  fence_id: string | null;
  /** The fence's name. */
  label: string;
  times: number;
  text: string;
  requirement_id: string | null;
  presentation: Record<string, string>;
}

export interface LeftAlone {
  requirement_id: string;
  title: string;
  text: string;
  first?: string | null;
}

/** An outing planned for one field: in which order, what to leave alone and why, when to stop. */
export interface Plan {
  field_id: string | null;
  text: string;
  steps: PlanStep[];
  /** `first`: the question that this one waits for. */
  leave_alone: LeftAlone[];
  stop_when: string[];
  /** Holds on other levels, and a fall not long ago. */
  cautions?: string[];
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
  /** The coach holds this level or one below it. */
  held?: boolean;
  next: NextStep[];
  forecast: Forecast | null;
  plans?: Plan[];
  cautions: string[];
}
