// A timed canter in one line, wherever one is listed.

import type { TimedCanter } from "../entries/bodies.ts";
import { lateness } from "../pace/lateness.ts";
import { headline } from "../pace/phrases.ts";
import { speed } from "../pace/speed.ts";
import { say } from "../words/index.ts";

/** “412 ± 4 m/min, 8 slow”. */
export function speedWords(canter: TimedCanter): string {
  const pace = speed(canter);
  return say(headline(pace, canter.target_speed_mpm === null ? null : lateness(pace, canter.target_speed_mpm)));
}
