// Made-up seasons of one horse whose truth is known: how often it stops, and whether something about the
// fence, the rein or the day makes it stop more. Same seed, same season.

import type { Attempt, Fence, Outing, Presentation, Profile } from "../../webclient/src/entries/bodies.ts";
import type { History } from "../../webclient/src/patterns/meetings.ts";
import { seeded } from "./fakePhone.ts";

const PROFILES: Profile[] = ["log", "palisade", "brush", "table", "ditch", "bank", "drop", "water", "roofed", "corner", "narrow", "rail"];
const NOTHING_SAID: Presentation = { rein: null, ground: null, way: null, landing: null, company: null, pace: null };
const HALF_HOUR_MS = 1_800_000;

/** What is known of one meeting before it is known how it went. */
export interface Asked {
  attempt: Attempt;
  fence: Fence;
  going: string;
  place: number;
  of: number;
  troubled_before: boolean;
}

export interface SeasonTruth {
  outings?: number;
  /** Chance of a stop at an ordinary fence on an ordinary day. */
  stop?: number;
  /** How unlike the days are: the standard deviation of the logarithm of the chance from day to day. */
  days?: number;
  /** By how much the odds of a stop are multiplied here. */
  odds?: (asked: Asked) => number;
  /** How often the manner is noted at all. */
  said?: number;
}

export interface Season {
  history: History;
  /** The day of each outing, in order: looking after each of them is looking as the season goes. */
  days: string[];
}

const id = (n: number, kind: number): string => `0${n.toString(16).padStart(7, "0")}-0000-7000-8000-00000000000${kind}`;

function normal(random: () => number): number {
  return Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
}

function pick<T>(random: () => number, items: readonly T[]): T {
  return items[Math.floor(random() * items.length)]!;
}

export function fence(profile: Profile, label: string = profile): Fence {
  return {
    field_id: null, label, profile, asks: [], elements: [], order: null, favourite: false, latitude: null, longitude: null,
    position_accuracy_m: null, sketch_east_m: null, sketch_north_m: null, notes: null, height_cm: null, brush_height_cm: null, spread_top_cm: null, spread_base_cm: null,
    spread_without_height_cm: null, drop_cm: null, water_depth_cm: null, face_width_cm: null,
  };
}

/** Three fields of twelve fences, one of each profile and two of some. */
function fields(): Map<string, Fence> {
  return new Map(Array.from({ length: 36 }, (_, n) => [`fence ${n}`, fence(PROFILES[n % 12]!, `${n}`)]));
}

export function season(seed: number, truth: SeasonTruth = {}): Season {
  const { outings = 40, stop = 0.05, days = 0.8, odds = () => 1, said = 0.85 } = truth;
  const random = seeded(seed);
  const fences = fields();
  const history = { outings: [] as { record_id: string; body: Outing; recorded_at: string }[], attempts: [] as { record_id: string; body: Attempt; recorded_at: string }[], fences };
  let made = 0;
  for (let n = 0; n < outings; n++) {
    const date = new Date(Date.UTC(2025, 0, 5) + n * 8 * 86_400_000).toISOString().slice(0, 10);
    const going = pick(random, ["good", "good", "good_to_firm", "good_to_soft", "soft"] as const);
    const outing_id = id(n + 1, 1);
    history.outings.push({ record_id: outing_id, recorded_at: `${date}T09:00:00Z`, body: {
      horse_id: "horse", field_id: null, date, activity: "cross_country_school", going, rider_confidence: null,
      minutes_in_saddle: null, from_memory: false, closed: true, accompanied: null, notes: null,
    } });
    const day = stop * Math.exp(days * normal(random) - (days * days) / 2);
    const right = 0.2 + 0.5 * random();
    const of = 6 + Math.floor(random() * 9);
    const field = Math.floor(random() * 3);
    let troubled = false;
    for (let place = 0; place < of; place++) {
      const fence_id = `fence ${12 * field + Math.floor(random() * 12)}`;
      let presentation: Presentation = random() < said
        ? { ...NOTHING_SAID, rein: random() < right ? "right" as const : "left" as const, ground: pick(random, ["level", "level", "uphill", "downhill"] as const), pace: pick(random, ["canter", "canter", "trot"] as const), company: pick(random, ["alone", "alone", "fence_before"] as const) }
        : NOTHING_SAID;
      const before = troubled;
      troubled = false;
      for (let go = 0; go < 3; go++) {
        // who has been stopped tries again from trot, or on the other rein
        if (go > 0 && presentation !== NOTHING_SAID && random() < 0.6) presentation = { ...presentation, pace: "trot", rein: random() < 0.5 ? "left" : "right" };
        const attempt: Attempt = { outing_id, fence_id, element: null, sequence_id: null, outcome: "clear", presentation, attitude: null, height_cm: null, canter_id: null, canter_offset_ms: null, note: null };
        const times = odds({ attempt, fence: fences.get(fence_id)!, going, place, of, troubled_before: before });
        const chance = Math.min(0.9, (times * day) / (1 - day + times * day));
        if (random() < chance) attempt.outcome = "refusal";
        made += 1;
        history.attempts.push({ record_id: id(made, 2), body: attempt, recorded_at: new Date(Date.parse(`${date}T09:00:00Z`) + (place * HALF_HOUR_MS) / 10 + go * 1000).toISOString() });
        if (attempt.outcome === "clear") break;
        troubled = true;
      }
    }
  }
  return { history, days: history.outings.map(({ body }) => body.date) };
}

/** The season as it was known on a day. */
export function upTo({ history }: Season, day: string): History {
  const outings = history.outings.filter(({ body }) => body.date <= day);
  const known = new Set(outings.map(({ record_id }) => record_id));
  return { ...history, outings, attempts: history.attempts.filter(({ body }) => known.has(body.outing_id)) };
}
