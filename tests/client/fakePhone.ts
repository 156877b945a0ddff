// A pretend phone with a true clock nobody can see and the two clocks a page can see. It sleeps, is hidden,
// reloads, is killed, and has its wall clock changed, the way real ones are.

import type { Plan } from "../../webclient/src/pace/run.ts";
import type { Sample } from "../../webclient/src/pace/trace.ts";

export const PLAN: Plan = {
  outing_id: "018f0000-0000-7000-8000-000000000001",
  track_id: null,
  distance_m: 420,
  distance_u_m: null,
  measured_by: "wheel",
  target_speed_mpm: 420,
  level_id: null,
  start: "flying",
  countdown_s: null,
  set_id: null,
  flags_m: [],
  over_fences: false,
};
export class FakePhone {
  true_ms = 0;
  page_id = "life-1";
  visible = true;
  #lives = 1;
  #monotonic = 5_000;
  #wall = Date.UTC(2026, 4, 3, 9, 12, 33, 120);

  sample(): Sample {
    return { monotonic_ms: this.#monotonic, wall_ms: this.#wall, page_id: this.page_id, visible: this.visible };
  }

  /** Awake for `ms`: all three clocks run. */
  awake(ms: number): void {
    this.true_ms += ms;
    this.#monotonic += ms;
    this.#wall += ms;
  }

  /** Asleep for `ms`: the monotonic clock stands still. */
  asleep(ms: number): void {
    this.true_ms += ms;
    this.#wall += ms;
  }

  /** Somebody or something moves the wall clock. */
  changeWall(ms: number): void {
    this.#wall += ms;
  }

  /** The page is gone for `ms` and comes back as another life with its own monotonic origin. */
  newLife(ms: number): void {
    this.true_ms += ms;
    this.#wall += ms;
    this.#lives += 1;
    this.page_id = `life-${this.#lives}`;
    this.#monotonic = 100 + this.#lives;
    this.visible = true;
  }
}

/** A small seeded generator (mulberry32, public domain): the same seed tells the same story. */
export function seeded(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
}
