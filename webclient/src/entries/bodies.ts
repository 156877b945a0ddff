// Made from the server's book/kinds.py by `python -m fieldtally.book.typescript`; a test checks that it is
// up to date. Do not edit it: edit kinds.py and run that again.

export const ACTIVITIES = ["cross_country_school", "jumping_school", "flatwork", "fitness", "event"] as const;
export type Activity = (typeof ACTIVITIES)[number];

export const GOING = ["firm", "good_to_firm", "good", "good_to_soft", "soft", "heavy"] as const;
export type Going = (typeof GOING)[number];

export const PROFILES = ["vertical", "oxer", "triple_bar", "ramp", "table", "log", "wall", "palisade", "rail", "roofed", "brush", "bullfinch", "corner", "narrow", "chevron", "keyhole", "trakehner", "ditch", "ditch_and_brush", "step", "bank", "drop", "water", "sunken_road", "coffin", "cross_pole"] as const;
export type Profile = (typeof PROFILES)[number];

export const ASKS = ["fixed", "brush", "wide_table", "ditch", "bank", "drop", "water", "combination", "narrow", "corner", "angled_line", "bending_line", "bounce", "airy_rail", "show_jump"] as const;
export type Ask = (typeof ASKS)[number];

export const REINS = ["left", "right", "straight"] as const;
export type Rein = (typeof REINS)[number];

export const GROUNDS = ["level", "uphill", "downhill"] as const;
export type Ground = (typeof GROUNDS)[number];

export const WAYS = ["up", "down", "in", "through", "out"] as const;
export type Way = (typeof WAYS)[number];

export const LANDINGS = ["ground", "water"] as const;
export type Landing = (typeof LANDINGS)[number];

export const COMPANIES = ["alone", "fence_before", "fence_after", "inside_combination"] as const;
export type Company = (typeof COMPANIES)[number];

export const PACES = ["trot", "canter", "gallop"] as const;
export type Pace = (typeof PACES)[number];

export const OUTCOMES = ["clear", "refusal", "run_out", "circle", "knockdown", "rider_fall", "horse_fall", "missed_flag", "retired"] as const;
export type Outcome = (typeof OUTCOMES)[number];

export const STOPS = ["refusal", "run_out", "circle"] as const;
export type Stop = (typeof STOPS)[number];

export const FALLS = ["rider_fall", "horse_fall"] as const;
export type Fall = (typeof FALLS)[number];

export const ATTITUDES = ["bold", "willing", "looky", "backed_off", "rushed"] as const;
export type Attitude = (typeof ATTITUDES)[number];

export const MEASURED_BY = ["wheel", "tape", "known", "paces", "phone"] as const;
export type MeasuredBy = (typeof MEASURED_BY)[number];

export const CLOCKS = ["agree", "slept", "wall_changed", "restored"] as const;
export type ClockVerdict = (typeof CLOCKS)[number];

export const STARTS = ["flying", "standing"] as const;
export type Start = (typeof STARTS)[number];

export const TRACE_SOURCES = ["phone", "file"] as const;
export type TraceSource = (typeof TRACE_SOURCES)[number];

export const PHOTO_TYPES = ["image/jpeg", "image/webp"] as const;
export type PhotoType = (typeof PHOTO_TYPES)[number];

export const VOICE_TYPES = ["audio/webm", "audio/mp4", "audio/ogg"] as const;
export type VoiceType = (typeof VOICE_TYPES)[number];

export const EVENT_STATUSES = ["completed", "eliminated", "retired", "withdrawn"] as const;
export type EventStatus = (typeof EVENT_STATUSES)[number];

export const DECISIONS = ["go", "not_yet", "hold"] as const;
export type Decision = (typeof DECISIONS)[number];

export const PHASES = ["dressage", "show_jumping", "cross_country"] as const;
export type Phase = (typeof PHASES)[number];

export const RULEBOOK_PARTS = ["dressage", "show_jumping", "cross_country", "entry", "qualifying_result"] as const;
export type RulebookPart = (typeof RULEBOOK_PARTS)[number];

export const ROLES = ["rider", "coach", "scribe", "reader"] as const;
export type Role = (typeof ROLES)[number];

export interface Horse {
  name: string;
  birth_year: number | null;
  rulebook_id: string | null;
  present_level_id: string | null;
  resting_heart_rate_bpm: number | null;
  resting_respiration_bpm: number | null;
  notes: string | null;
}

export interface Field {
  name: string;
  notes: string | null;
}

export interface Element {
  height_cm: number | null;
  brush_height_cm: number | null;
  spread_top_cm: number | null;
  spread_base_cm: number | null;
  spread_without_height_cm: number | null;
  drop_cm: number | null;
  water_depth_cm: number | null;
  face_width_cm: number | null;
  letter: "A" | "B" | "C" | "D" | "E" | "F";
  profile: Profile;
  asks: Ask[];
  distance_to_next_m: number | null;
}

export interface Fence {
  height_cm: number | null;
  brush_height_cm: number | null;
  spread_top_cm: number | null;
  spread_base_cm: number | null;
  spread_without_height_cm: number | null;
  drop_cm: number | null;
  water_depth_cm: number | null;
  face_width_cm: number | null;
  field_id: string | null;
  label: string;
  profile: Profile;
  asks: Ask[];
  elements: Element[];
  order: number | null;
  favourite: boolean;
  latitude: number | null;
  longitude: number | null;
  position_accuracy_m: number | null;
  sketch_east_m: number | null;
  sketch_north_m: number | null;
  notes: string | null;
}

export interface Track {
  field_id: string | null;
  name: string;
  distance_m: number;
  measured_by: MeasuredBy;
  distance_u_m: number | null;
  calibration_id: string | null;
  reading_m: number | null;
  flags_m: number[];
  notes: string | null;
}

export interface Calibration {
  instrument: string;
  measured_by: MeasuredBy;
  taped_distance_m: number;
  taped_u_m: number | null;
  walked_m: number[];
  reading_step_m: number;
  date: string;
  note: string | null;
}

export interface Outing {
  horse_id: string;
  field_id: string | null;
  date: string;
  activity: Activity;
  going: Going | null;
  rider_confidence: number | null;
  minutes_in_saddle: number | null;
  from_memory: boolean;
  closed: boolean;
  accompanied: boolean | null;
  notes: string | null;
}

export interface Presentation {
  rein: Rein | null;
  ground: Ground | null;
  way: Way | null;
  landing: Landing | null;
  company: Company | null;
  pace: Pace | null;
}

export interface Attempt {
  outing_id: string;
  fence_id: string;
  element: "A" | "B" | "C" | "D" | "E" | "F" | null;
  sequence_id: string | null;
  outcome: Outcome;
  presentation: Presentation;
  attitude: Attitude | null;
  height_cm: number | null;
  canter_id: string | null;
  canter_offset_ms: number | null;
  note: string | null;
}

export interface TimedCanter {
  outing_id: string;
  track_id: string | null;
  distance_m: number;
  distance_u_m: number | null;
  measured_by: MeasuredBy;
  elapsed_ms: number;
  monotonic_ms: number | null;
  wall_ms: number | null;
  clock: ClockVerdict;
  splits_ms: number[];
  target_speed_mpm: number | null;
  level_id: string | null;
  start: Start;
  countdown_s: number | null;
  set_id: string | null;
  flags_m: number[];
  over_fences: boolean;
  note: string | null;
}

export interface WorkInterval {
  work_s: number;
  rest_s: number;
  speed_mpm: number | null;
}

export interface RecoveryCheck {
  minute: number;
  heart_rate_bpm: number | null;
  respiration_bpm: number | null;
}

export interface IntervalSet {
  outing_id: string;
  intervals: WorkInterval[];
  recoveries: RecoveryCheck[];
  from_memory: boolean;
  note: string | null;
}

export interface Mark {
  movement: string;
  mark: number;
  coefficient: number;
}

export interface FlatworkTest {
  horse_id: string;
  outing_id: string | null;
  date: string;
  test: string;
  rulebook_id: string | null;
  level_id: string | null;
  percent: number | null;
  marks: Mark[];
  errors: number;
  judged: boolean;
  note: string | null;
}

export interface Jump {
  label: string;
  outcome: "clear" | "knockdown" | "refusal" | "run_out" | "rider_fall" | "horse_fall";
}

export interface JumpingRound {
  horse_id: string;
  outing_id: string | null;
  date: string;
  height_cm: number;
  efforts: number;
  knockdowns: number;
  refusals: number;
  combinations: number | null;
  rider_fall: boolean;
  horse_fall: boolean;
  completed: boolean;
  time_penalties: number | null;
  judged: boolean;
  jumps: Jump[];
  note: string | null;
}

export interface EventResult {
  horse_id: string;
  outing_id: string | null;
  date: string;
  event: string;
  rulebook_id: string | null;
  level_id: string;
  status: EventStatus;
  dressage_penalties: number | null;
  show_jumping_jump_penalties: number | null;
  show_jumping_time_penalties: number | null;
  cross_country_jump_penalties: number | null;
  cross_country_time_penalties: number | null;
  cross_country_seconds_over: number | null;
  dangerous_riding: boolean;
  frangible_or_flag: number;
  rider_fall: boolean;
  horse_fall: boolean;
  place: number | null;
  starters: number | null;
  note: string | null;
}

export interface Note {
  about_id: string;
  text: string;
}

export interface Remark {
  about_id: string;
  text: string;
}

export interface Word {
  horse_id: string;
  rulebook_id: string;
  level_id: string;
  decision: Decision;
  reason: string;
  expires_on: string | null;
}

export interface RulebookValue {
  rulebook_id: string;
  level_id: string;
  phase: RulebookPart;
  quantity: string;
  value: number | null;
  edition: string;
  article: string;
}

export interface BarChange {
  rulebook_id: string;
  level_id: string;
  requirement_id: string;
  quantity: string;
  value: number | null;
  reason: string;
}

export interface Trace {
  outing_id: string;
  canter_id: string | null;
  source: TraceSource;
  name: string | null;
  started_at_ms: number | null;
  dt_ms: number[];
  latitude_udeg: number[];
  longitude_udeg: number[];
  accuracy_m: number[];
  breaks: number[];
  left_out: number;
}

export interface Photo {
  about_id: string;
  media_sha256: string;
  media_type: PhotoType;
  size_bytes: number;
  width_px: number;
  height_px: number;
  caption: string | null;
}

export interface VoiceNote {
  about_id: string;
  media_sha256: string;
  media_type: VoiceType;
  size_bytes: number;
  duration_ms: number;
  text: string | null;
}

export interface HorseInput {
  name: string;
  birth_year?: number | null;
  rulebook_id?: string | null;
  present_level_id?: string | null;
  resting_heart_rate_bpm?: number | null;
  resting_respiration_bpm?: number | null;
  notes?: string | null;
}

export interface FieldInput {
  name: string;
  notes?: string | null;
}

export interface ElementInput {
  height_cm?: number | null;
  brush_height_cm?: number | null;
  spread_top_cm?: number | null;
  spread_base_cm?: number | null;
  spread_without_height_cm?: number | null;
  drop_cm?: number | null;
  water_depth_cm?: number | null;
  face_width_cm?: number | null;
  letter: "A" | "B" | "C" | "D" | "E" | "F";
  profile: Profile;
  asks?: Ask[];
  distance_to_next_m?: number | null;
}

export interface FenceInput {
  height_cm?: number | null;
  brush_height_cm?: number | null;
  spread_top_cm?: number | null;
  spread_base_cm?: number | null;
  spread_without_height_cm?: number | null;
  drop_cm?: number | null;
  water_depth_cm?: number | null;
  face_width_cm?: number | null;
  field_id?: string | null;
  label: string;
  profile: Profile;
  asks?: Ask[];
  elements?: ElementInput[];
  order?: number | null;
  favourite?: boolean;
  latitude?: number | null;
  longitude?: number | null;
  position_accuracy_m?: number | null;
  sketch_east_m?: number | null;
  sketch_north_m?: number | null;
  notes?: string | null;
}

export interface TrackInput {
  field_id?: string | null;
  name: string;
  distance_m: number;
  measured_by: MeasuredBy;
  distance_u_m?: number | null;
  calibration_id?: string | null;
  reading_m?: number | null;
  flags_m?: number[];
  notes?: string | null;
}

export interface CalibrationInput {
  instrument: string;
  measured_by: MeasuredBy;
  taped_distance_m: number;
  taped_u_m?: number | null;
  walked_m: number[];
  reading_step_m?: number;
  date: string;
  note?: string | null;
}

export interface OutingInput {
  horse_id: string;
  field_id?: string | null;
  date: string;
  activity: Activity;
  going?: Going | null;
  rider_confidence?: number | null;
  minutes_in_saddle?: number | null;
  from_memory?: boolean;
  closed?: boolean;
  accompanied?: boolean | null;
  notes?: string | null;
}

export interface PresentationInput {
  rein?: Rein | null;
  ground?: Ground | null;
  way?: Way | null;
  landing?: Landing | null;
  company?: Company | null;
  pace?: Pace | null;
}

export interface AttemptInput {
  outing_id: string;
  fence_id: string;
  element?: "A" | "B" | "C" | "D" | "E" | "F" | null;
  sequence_id?: string | null;
  outcome: Outcome;
  presentation?: PresentationInput;
  attitude?: Attitude | null;
  height_cm?: number | null;
  canter_id?: string | null;
  canter_offset_ms?: number | null;
  note?: string | null;
}

export interface TimedCanterInput {
  outing_id: string;
  track_id?: string | null;
  distance_m: number;
  distance_u_m?: number | null;
  measured_by: MeasuredBy;
  elapsed_ms: number;
  monotonic_ms?: number | null;
  wall_ms?: number | null;
  clock?: ClockVerdict;
  splits_ms?: number[];
  target_speed_mpm?: number | null;
  level_id?: string | null;
  start?: Start;
  countdown_s?: number | null;
  set_id?: string | null;
  flags_m?: number[];
  over_fences?: boolean;
  note?: string | null;
}

export interface WorkIntervalInput {
  work_s: number;
  rest_s: number;
  speed_mpm?: number | null;
}

export interface RecoveryCheckInput {
  minute: number;
  heart_rate_bpm?: number | null;
  respiration_bpm?: number | null;
}

export interface IntervalSetInput {
  outing_id: string;
  intervals: WorkIntervalInput[];
  recoveries?: RecoveryCheckInput[];
  from_memory?: boolean;
  note?: string | null;
}

export interface MarkInput {
  movement: string;
  mark: number;
  coefficient?: number;
}

export interface FlatworkTestInput {
  horse_id: string;
  outing_id?: string | null;
  date: string;
  test: string;
  rulebook_id?: string | null;
  level_id?: string | null;
  percent?: number | null;
  marks?: MarkInput[];
  errors?: number;
  judged?: boolean;
  note?: string | null;
}

export interface JumpInput {
  label: string;
  outcome: "clear" | "knockdown" | "refusal" | "run_out" | "rider_fall" | "horse_fall";
}

export interface JumpingRoundInput {
  horse_id: string;
  outing_id?: string | null;
  date: string;
  height_cm: number;
  efforts: number;
  knockdowns?: number;
  refusals?: number;
  combinations?: number | null;
  rider_fall?: boolean;
  horse_fall?: boolean;
  completed?: boolean;
  time_penalties?: number | null;
  judged?: boolean;
  jumps?: JumpInput[];
  note?: string | null;
}

export interface EventResultInput {
  horse_id: string;
  outing_id?: string | null;
  date: string;
  event: string;
  rulebook_id?: string | null;
  level_id: string;
  status: EventStatus;
  dressage_penalties?: number | null;
  show_jumping_jump_penalties?: number | null;
  show_jumping_time_penalties?: number | null;
  cross_country_jump_penalties?: number | null;
  cross_country_time_penalties?: number | null;
  cross_country_seconds_over?: number | null;
  dangerous_riding?: boolean;
  frangible_or_flag?: number;
  rider_fall?: boolean;
  horse_fall?: boolean;
  place?: number | null;
  starters?: number | null;
  note?: string | null;
}

export interface NoteInput {
  about_id: string;
  text: string;
}

export interface RemarkInput {
  about_id: string;
  text: string;
}

export interface WordInput {
  horse_id: string;
  rulebook_id: string;
  level_id: string;
  decision: Decision;
  reason: string;
  expires_on?: string | null;
}

export interface RulebookValueInput {
  rulebook_id: string;
  level_id: string;
  phase: RulebookPart;
  quantity: string;
  value?: number | null;
  edition: string;
  article: string;
}

export interface BarChangeInput {
  rulebook_id: string;
  level_id: string;
  requirement_id: string;
  quantity: string;
  value?: number | null;
  reason: string;
}

export interface TraceInput {
  outing_id: string;
  canter_id?: string | null;
  source: TraceSource;
  name?: string | null;
  started_at_ms?: number | null;
  dt_ms?: number[];
  latitude_udeg: number[];
  longitude_udeg: number[];
  accuracy_m?: number[];
  breaks?: number[];
  left_out?: number;
}

export interface PhotoInput {
  about_id: string;
  media_sha256: string;
  media_type: PhotoType;
  size_bytes: number;
  width_px: number;
  height_px: number;
  caption?: string | null;
}

export interface VoiceNoteInput {
  about_id: string;
  media_sha256: string;
  media_type: VoiceType;
  size_bytes: number;
  duration_ms: number;
  text?: string | null;
}

/** kind -> its body, complete. */
export interface Bodies {
  horse: Horse;
  field: Field;
  fence: Fence;
  track: Track;
  calibration: Calibration;
  outing: Outing;
  attempt: Attempt;
  timed_canter: TimedCanter;
  interval_set: IntervalSet;
  flatwork_test: FlatworkTest;
  jumping_round: JumpingRound;
  event_result: EventResult;
  note: Note;
  remark: Remark;
  word: Word;
  rulebook_value: RulebookValue;
  bar_change: BarChange;
  trace: Trace;
  photo: Photo;
  voice_note: VoiceNote;
}

/** kind -> its body as it may be written: defaults left out. */
export interface BodyInputs {
  horse: HorseInput;
  field: FieldInput;
  fence: FenceInput;
  track: TrackInput;
  calibration: CalibrationInput;
  outing: OutingInput;
  attempt: AttemptInput;
  timed_canter: TimedCanterInput;
  interval_set: IntervalSetInput;
  flatwork_test: FlatworkTestInput;
  jumping_round: JumpingRoundInput;
  event_result: EventResultInput;
  note: NoteInput;
  remark: RemarkInput;
  word: WordInput;
  rulebook_value: RulebookValueInput;
  bar_change: BarChangeInput;
  trace: TraceInput;
  photo: PhotoInput;
  voice_note: VoiceNoteInput;
}

export type KindName = keyof Bodies;

export const KINDS: { readonly [K in KindName]: { readonly version: number; readonly evidence: boolean; readonly writers: readonly Role[] } } = {
  horse: { version: 1, evidence: true, writers: ["rider"] },
  field: { version: 1, evidence: false, writers: ["rider", "scribe", "coach"] },
  fence: { version: 2, evidence: true, writers: ["rider", "scribe", "coach"] },
  track: { version: 2, evidence: true, writers: ["rider", "scribe", "coach"] },
  calibration: { version: 1, evidence: false, writers: ["rider", "scribe", "coach"] },
  outing: { version: 2, evidence: true, writers: ["rider", "scribe", "coach"] },
  attempt: { version: 1, evidence: true, writers: ["rider", "scribe", "coach"] },
  timed_canter: { version: 2, evidence: true, writers: ["rider", "scribe", "coach"] },
  interval_set: { version: 2, evidence: true, writers: ["rider", "scribe", "coach"] },
  flatwork_test: { version: 1, evidence: true, writers: ["rider", "scribe", "coach"] },
  jumping_round: { version: 2, evidence: true, writers: ["rider", "scribe", "coach"] },
  event_result: { version: 1, evidence: true, writers: ["rider", "scribe", "coach"] },
  note: { version: 1, evidence: false, writers: ["rider", "scribe", "coach"] },
  remark: { version: 1, evidence: false, writers: ["coach"] },
  word: { version: 1, evidence: true, writers: ["coach"] },
  rulebook_value: { version: 1, evidence: true, writers: ["rider", "coach"] },
  bar_change: { version: 1, evidence: true, writers: ["coach"] },
  trace: { version: 1, evidence: false, writers: ["rider", "scribe", "coach"] },
  photo: { version: 1, evidence: false, writers: ["rider", "scribe", "coach"] },
  voice_note: { version: 1, evidence: false, writers: ["rider", "scribe", "coach"] },
};

export interface Limit {
  readonly least?: number;
  readonly most?: number;
  readonly unit?: string;
  readonly whole?: boolean;
  readonly characters?: number;
}

/** Limits by kind and field path; inner bodies are reached with a dot. */
export const LIMITS: { readonly [K in KindName]: { readonly [path: string]: Limit } } = {
  "horse": {"name": {"least": 1, "characters": 80}, "birth_year": {"least": 1990, "most": 2199, "unit": "year", "whole": true}, "rulebook_id": {"least": 0, "characters": 60}, "present_level_id": {"least": 0, "characters": 60}, "resting_heart_rate_bpm": {"least": 15, "most": 80, "unit": "beats per minute", "whole": false}, "resting_respiration_bpm": {"least": 4, "most": 60, "unit": "breaths per minute", "whole": false}, "notes": {"least": 0, "characters": 4000}},
  "field": {"name": {"least": 1, "characters": 120}, "notes": {"least": 0, "characters": 4000}},
  "fence": {"height_cm": {"least": 1, "most": 250, "unit": "cm", "whole": false}, "brush_height_cm": {"least": 1, "most": 300, "unit": "cm", "whole": false}, "spread_top_cm": {"least": 1, "most": 600, "unit": "cm", "whole": false}, "spread_base_cm": {"least": 1, "most": 800, "unit": "cm", "whole": false}, "spread_without_height_cm": {"least": 1, "most": 900, "unit": "cm", "whole": false}, "drop_cm": {"least": 1, "most": 400, "unit": "cm", "whole": false}, "water_depth_cm": {"least": 1, "most": 150, "unit": "cm", "whole": false}, "face_width_cm": {"least": 1, "most": 3000, "unit": "cm", "whole": false}, "label": {"least": 1, "characters": 60}, "elements.height_cm": {"least": 1, "most": 250, "unit": "cm", "whole": false}, "elements.brush_height_cm": {"least": 1, "most": 300, "unit": "cm", "whole": false}, "elements.spread_top_cm": {"least": 1, "most": 600, "unit": "cm", "whole": false}, "elements.spread_base_cm": {"least": 1, "most": 800, "unit": "cm", "whole": false}, "elements.spread_without_height_cm": {"least": 1, "most": 900, "unit": "cm", "whole": false}, "elements.drop_cm": {"least": 1, "most": 400, "unit": "cm", "whole": false}, "elements.water_depth_cm": {"least": 1, "most": 150, "unit": "cm", "whole": false}, "elements.face_width_cm": {"least": 1, "most": 3000, "unit": "cm", "whole": false}, "elements.distance_to_next_m": {"least": 0.5, "most": 60, "unit": "m", "whole": false}, "order": {"least": 0, "most": 10000, "unit": "place in the list", "whole": false}, "latitude": {"least": -90, "most": 90, "unit": "degrees", "whole": false}, "longitude": {"least": -180, "most": 180, "unit": "degrees", "whole": false}, "position_accuracy_m": {"least": 0, "most": 100000, "unit": "m", "whole": false}, "sketch_east_m": {"least": -20000, "most": 20000, "unit": "m", "whole": false}, "sketch_north_m": {"least": -20000, "most": 20000, "unit": "m", "whole": false}, "notes": {"least": 0, "characters": 4000}},
  "track": {"name": {"least": 1, "characters": 120}, "distance_m": {"least": 10, "most": 10000, "unit": "m", "whole": false}, "distance_u_m": {"least": 0, "most": 1000, "unit": "m", "whole": false}, "reading_m": {"least": 1, "most": 20000, "unit": "m", "whole": false}, "flags_m": {"least": 0, "most": 10000, "unit": "m", "whole": false}, "notes": {"least": 0, "characters": 4000}},
  "calibration": {"instrument": {"least": 1, "characters": 120}, "taped_distance_m": {"least": 10, "most": 1000, "unit": "m", "whole": false}, "taped_u_m": {"least": 0, "most": 10, "unit": "m", "whole": false}, "walked_m": {"least": 1, "most": 10000, "unit": "m", "whole": false}, "reading_step_m": {"least": 0, "most": 10, "unit": "m", "whole": false}, "note": {"least": 0, "characters": 2000}},
  "outing": {"rider_confidence": {"least": 1, "most": 5, "unit": "of 5", "whole": true}, "minutes_in_saddle": {"least": 1, "most": 1440, "unit": "minutes", "whole": true}, "notes": {"least": 0, "characters": 4000}},
  "attempt": {"height_cm": {"least": 1, "most": 250, "unit": "cm", "whole": false}, "canter_offset_ms": {"least": 0, "most": 7200000, "unit": "ms", "whole": true}, "note": {"least": 0, "characters": 2000}},
  "timed_canter": {"distance_m": {"least": 10, "most": 10000, "unit": "m", "whole": false}, "distance_u_m": {"least": 0, "most": 1000, "unit": "m", "whole": false}, "elapsed_ms": {"least": 500, "most": 7200000, "unit": "ms", "whole": true}, "monotonic_ms": {"least": 0, "most": 604800000, "unit": "ms", "whole": true}, "wall_ms": {"least": -604800000, "most": 604800000, "unit": "ms", "whole": true}, "splits_ms": {"least": 0, "most": 7200000, "unit": "ms", "whole": true}, "target_speed_mpm": {"least": 50, "most": 1000, "unit": "m/min", "whole": false}, "level_id": {"least": 0, "characters": 60}, "countdown_s": {"least": 1, "most": 60, "unit": "s", "whole": true}, "flags_m": {"least": 0, "most": 10000, "unit": "m", "whole": false}, "note": {"least": 0, "characters": 2000}},
  "interval_set": {"intervals.work_s": {"least": 5, "most": 7200, "unit": "s", "whole": false}, "intervals.rest_s": {"least": 0, "most": 7200, "unit": "s", "whole": false}, "intervals.speed_mpm": {"least": 50, "most": 1000, "unit": "m/min", "whole": false}, "recoveries.minute": {"least": 0, "most": 240, "unit": "minutes", "whole": false}, "recoveries.heart_rate_bpm": {"least": 15, "most": 260, "unit": "beats per minute", "whole": false}, "recoveries.respiration_bpm": {"least": 4, "most": 200, "unit": "breaths per minute", "whole": false}, "note": {"least": 0, "characters": 2000}},
  "flatwork_test": {"test": {"least": 1, "characters": 160}, "rulebook_id": {"least": 0, "characters": 60}, "level_id": {"least": 0, "characters": 60}, "percent": {"least": 0, "most": 100, "unit": "%", "whole": false}, "marks.movement": {"least": 1, "characters": 120}, "marks.mark": {"least": 0, "most": 10, "unit": "marks", "whole": false}, "marks.coefficient": {"least": 1, "most": 5, "unit": "times", "whole": false}, "errors": {"least": 0, "most": 3, "unit": "errors", "whole": true}, "note": {"least": 0, "characters": 2000}},
  "jumping_round": {"height_cm": {"least": 20, "most": 200, "unit": "cm", "whole": false}, "efforts": {"least": 1, "most": 40, "unit": "efforts", "whole": true}, "knockdowns": {"least": 0, "most": 40, "unit": "knockdowns", "whole": true}, "refusals": {"least": 0, "most": 10, "unit": "refusals", "whole": true}, "combinations": {"least": 0, "most": 10, "unit": "combinations", "whole": true}, "time_penalties": {"least": 0, "most": 200, "unit": "penalties", "whole": false}, "jumps.label": {"least": 1, "characters": 12}, "note": {"least": 0, "characters": 2000}},
  "event_result": {"event": {"least": 1, "characters": 160}, "rulebook_id": {"least": 0, "characters": 60}, "level_id": {"least": 1, "characters": 60}, "dressage_penalties": {"least": 0, "most": 100, "unit": "penalties", "whole": false}, "show_jumping_jump_penalties": {"least": 0, "most": 200, "unit": "penalties", "whole": false}, "show_jumping_time_penalties": {"least": 0, "most": 200, "unit": "penalties", "whole": false}, "cross_country_jump_penalties": {"least": 0, "most": 400, "unit": "penalties", "whole": false}, "cross_country_time_penalties": {"least": 0, "most": 400, "unit": "penalties", "whole": false}, "cross_country_seconds_over": {"least": -600, "most": 1200, "unit": "s", "whole": true}, "frangible_or_flag": {"least": 0, "most": 5, "unit": "times", "whole": true}, "place": {"least": 1, "most": 500, "unit": "place", "whole": true}, "starters": {"least": 1, "most": 500, "unit": "starters", "whole": true}, "note": {"least": 0, "characters": 2000}},
  "note": {"text": {"least": 1, "characters": 4000}},
  "remark": {"text": {"least": 1, "characters": 4000}},
  "word": {"rulebook_id": {"least": 1, "characters": 60}, "level_id": {"least": 1, "characters": 60}, "reason": {"least": 1, "characters": 2000}},
  "rulebook_value": {"rulebook_id": {"least": 1, "characters": 60}, "level_id": {"least": 1, "characters": 60}, "quantity": {"least": 1, "characters": 80}, "value": {"least": -1000000, "most": 1000000, "unit": "in the quantity's unit", "whole": false}, "edition": {"least": 1, "characters": 120}, "article": {"least": 1, "characters": 120}},
  "bar_change": {"rulebook_id": {"least": 1, "characters": 60}, "level_id": {"least": 1, "characters": 60}, "requirement_id": {"least": 1, "characters": 120}, "quantity": {"least": 1, "characters": 80}, "value": {"least": -1000000, "most": 1000000, "unit": "in the quantity's unit", "whole": false}, "reason": {"least": 1, "characters": 2000}},
  "trace": {"name": {"least": 0, "characters": 120}, "started_at_ms": {"least": 631152000000, "most": 7258118400000, "unit": "ms", "whole": true}, "dt_ms": {"least": 0, "most": 6622560000000, "unit": "ms", "whole": true}, "latitude_udeg": {"least": -180000000, "most": 180000000, "unit": "millionths of a degree", "whole": true}, "longitude_udeg": {"least": -360000000, "most": 360000000, "unit": "millionths of a degree", "whole": true}, "accuracy_m": {"least": 0, "most": 100000, "unit": "m", "whole": true}, "breaks": {"least": 1, "most": 1999, "unit": "place in the list", "whole": true}, "left_out": {"least": 0, "most": 10000000, "unit": "points", "whole": true}},
  "photo": {"media_sha256": {"least": 64, "characters": 64}, "size_bytes": {"least": 1, "most": 2097152, "unit": "bytes", "whole": true}, "width_px": {"least": 1, "most": 20000, "unit": "px", "whole": true}, "height_px": {"least": 1, "most": 20000, "unit": "px", "whole": true}, "caption": {"least": 0, "characters": 200}},
  "voice_note": {"media_sha256": {"least": 64, "characters": 64}, "size_bytes": {"least": 1, "most": 1048576, "unit": "bytes", "whole": true}, "duration_ms": {"least": 1, "most": 65000, "unit": "ms", "whole": true}, "text": {"least": 0, "characters": 4000}},
};

/** Fields that state one fact between them: edits inside a group never merge. */
export const TOGETHER: { readonly [kind: string]: readonly (readonly string[])[] } = {
  "horse": [["rulebook_id", "present_level_id"]],
  "fence": [["profile", "elements", "asks", "height_cm", "brush_height_cm", "spread_top_cm", "spread_base_cm", "spread_without_height_cm", "drop_cm", "water_depth_cm", "face_width_cm"], ["latitude", "longitude", "position_accuracy_m"], ["sketch_east_m", "sketch_north_m"]],
  "track": [["distance_m", "measured_by", "distance_u_m", "calibration_id", "reading_m", "flags_m"]],
  "calibration": [["instrument", "measured_by", "taped_distance_m", "taped_u_m", "walked_m", "reading_step_m"]],
  "outing": [["horse_id", "date"]],
  "attempt": [["fence_id", "element", "sequence_id", "height_cm"], ["canter_id", "canter_offset_ms"]],
  "timed_canter": [["track_id", "distance_m", "distance_u_m", "measured_by", "elapsed_ms", "monotonic_ms", "wall_ms", "clock", "splits_ms", "flags_m"], ["start", "countdown_s"], ["target_speed_mpm", "level_id"]],
  "flatwork_test": [["test", "percent", "marks", "errors"], ["rulebook_id", "level_id"]],
  "jumping_round": [["height_cm", "efforts", "combinations"], ["knockdowns", "refusals", "rider_fall", "horse_fall", "completed", "time_penalties", "jumps"]],
  "event_result": [["rulebook_id", "level_id"], ["status", "dressage_penalties", "show_jumping_jump_penalties", "show_jumping_time_penalties", "cross_country_jump_penalties", "cross_country_time_penalties", "cross_country_seconds_over", "rider_fall", "horse_fall"], ["place", "starters"]],
  "word": [["horse_id", "rulebook_id", "level_id", "decision", "reason", "expires_on"]],
  "rulebook_value": [["rulebook_id", "level_id", "phase", "quantity", "value", "edition", "article"]],
  "trace": [["source", "started_at_ms", "dt_ms", "latitude_udeg", "longitude_udeg", "accuracy_m", "breaks", "left_out"]],
  "bar_change": [["rulebook_id", "level_id", "requirement_id", "quantity", "value"]],
  "photo": [["media_sha256", "media_type", "size_bytes", "width_px", "height_px"]],
  "voice_note": [["media_sha256", "media_type", "size_bytes", "duration_ms"]],
};

const SHAPES: { readonly [K in KindName]: Shape } = {
  "horse": {"birth_year": {"missing": null}, "rulebook_id": {"missing": null}, "present_level_id": {"missing": null}, "resting_heart_rate_bpm": {"missing": null}, "resting_respiration_bpm": {"missing": null}, "notes": {"missing": null}},
  "field": {"notes": {"missing": null}},
  "fence": {"height_cm": {"missing": null}, "brush_height_cm": {"missing": null}, "spread_top_cm": {"missing": null}, "spread_base_cm": {"missing": null}, "spread_without_height_cm": {"missing": null}, "drop_cm": {"missing": null}, "water_depth_cm": {"missing": null}, "face_width_cm": {"missing": null}, "field_id": {"missing": null}, "asks": {"missing": []}, "elements": {"missing": [], "shape": {"height_cm": {"missing": null}, "brush_height_cm": {"missing": null}, "spread_top_cm": {"missing": null}, "spread_base_cm": {"missing": null}, "spread_without_height_cm": {"missing": null}, "drop_cm": {"missing": null}, "water_depth_cm": {"missing": null}, "face_width_cm": {"missing": null}, "asks": {"missing": []}, "distance_to_next_m": {"missing": null}}, "many": true}, "order": {"missing": null}, "favourite": {"missing": false}, "latitude": {"missing": null}, "longitude": {"missing": null}, "position_accuracy_m": {"missing": null}, "sketch_east_m": {"missing": null}, "sketch_north_m": {"missing": null}, "notes": {"missing": null}},
  "track": {"field_id": {"missing": null}, "distance_u_m": {"missing": null}, "calibration_id": {"missing": null}, "reading_m": {"missing": null}, "flags_m": {"missing": []}, "notes": {"missing": null}},
  "calibration": {"taped_u_m": {"missing": null}, "reading_step_m": {"missing": 0.1}, "note": {"missing": null}},
  "outing": {"field_id": {"missing": null}, "going": {"missing": null}, "rider_confidence": {"missing": null}, "minutes_in_saddle": {"missing": null}, "from_memory": {"missing": false}, "closed": {"missing": false}, "accompanied": {"missing": null}, "notes": {"missing": null}},
  "attempt": {"element": {"missing": null}, "sequence_id": {"missing": null}, "presentation": {"missing": {"rein": null, "ground": null, "way": null, "landing": null, "company": null, "pace": null}, "shape": {"rein": {"missing": null}, "ground": {"missing": null}, "way": {"missing": null}, "landing": {"missing": null}, "company": {"missing": null}, "pace": {"missing": null}}}, "attitude": {"missing": null}, "height_cm": {"missing": null}, "canter_id": {"missing": null}, "canter_offset_ms": {"missing": null}, "note": {"missing": null}},
  "timed_canter": {"track_id": {"missing": null}, "distance_u_m": {"missing": null}, "monotonic_ms": {"missing": null}, "wall_ms": {"missing": null}, "clock": {"missing": "agree"}, "splits_ms": {"missing": []}, "target_speed_mpm": {"missing": null}, "level_id": {"missing": null}, "start": {"missing": "flying"}, "countdown_s": {"missing": null}, "set_id": {"missing": null}, "flags_m": {"missing": []}, "over_fences": {"missing": false}, "note": {"missing": null}},
  "interval_set": {"intervals": {"shape": {"speed_mpm": {"missing": null}}, "many": true}, "recoveries": {"missing": [], "shape": {"heart_rate_bpm": {"missing": null}, "respiration_bpm": {"missing": null}}, "many": true}, "from_memory": {"missing": false}, "note": {"missing": null}},
  "flatwork_test": {"outing_id": {"missing": null}, "rulebook_id": {"missing": null}, "level_id": {"missing": null}, "percent": {"missing": null}, "marks": {"missing": [], "shape": {"coefficient": {"missing": 1}}, "many": true}, "errors": {"missing": 0}, "judged": {"missing": false}, "note": {"missing": null}},
  "jumping_round": {"outing_id": {"missing": null}, "knockdowns": {"missing": 0}, "refusals": {"missing": 0}, "combinations": {"missing": null}, "rider_fall": {"missing": false}, "horse_fall": {"missing": false}, "completed": {"missing": true}, "time_penalties": {"missing": null}, "judged": {"missing": false}, "jumps": {"missing": [], "shape": {}, "many": true}, "note": {"missing": null}},
  "event_result": {"outing_id": {"missing": null}, "rulebook_id": {"missing": null}, "dressage_penalties": {"missing": null}, "show_jumping_jump_penalties": {"missing": null}, "show_jumping_time_penalties": {"missing": null}, "cross_country_jump_penalties": {"missing": null}, "cross_country_time_penalties": {"missing": null}, "cross_country_seconds_over": {"missing": null}, "dangerous_riding": {"missing": false}, "frangible_or_flag": {"missing": 0}, "rider_fall": {"missing": false}, "horse_fall": {"missing": false}, "place": {"missing": null}, "starters": {"missing": null}, "note": {"missing": null}},
  "note": {},
  "remark": {},
  "word": {"expires_on": {"missing": null}},
  "rulebook_value": {"value": {"missing": null}},
  "bar_change": {"value": {"missing": null}},
  "trace": {"canter_id": {"missing": null}, "name": {"missing": null}, "started_at_ms": {"missing": null}, "dt_ms": {"missing": []}, "accuracy_m": {"missing": []}, "breaks": {"missing": []}, "left_out": {"missing": 0}},
  "photo": {"caption": {"missing": null}},
  "voice_note": {"text": {"missing": null}},
};

type Shape = {
  readonly [key: string]: { readonly missing?: unknown; readonly shape?: Shape; readonly many?: true };
};

/** The body with every default filled in, as screens and the fold read it. The one given is not changed. */
export function completeBody<K extends KindName>(kind: K, body: BodyInputs[K]): Bodies[K] {
  return complete(SHAPES[kind], body as unknown as Record<string, unknown>) as unknown as Bodies[K];
}

function complete(shape: Shape, body: Record<string, unknown>): Record<string, unknown> {
  const full: Record<string, unknown> = { ...body };
  for (const [key, part] of Object.entries(shape)) {
    if (full[key] === undefined && "missing" in part) full[key] = structuredClone(part.missing);
    if (part.shape && full[key] != null) full[key] = completePart(part.shape, full[key], part.many);
  }
  return full;
}

function completePart(shape: Shape, value: unknown, many: true | undefined): unknown {
  if (!many) return complete(shape, value as Record<string, unknown>);
  return (value as Record<string, unknown>[]).map((each) => complete(shape, each));
}
