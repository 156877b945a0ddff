// The ways a typical course may end, with their chances, for the picture.

import type { Forecast } from "./standing.ts";

export interface Ending {
  ending: number | "not_completed";
  chance: number;
  /** At the pair's present level, where the forecast is another's. */
  present?: number;
}

/** Clear first, then by penalties, not completed last; an ending that only one of the two levels has counts 0 there. */
export function endings(forecast: Forecast): Ending[] {
  const { present_level: present } = forecast;
  const here = chances(forecast);
  const there = present && chances(present);
  const all = [...new Set([...here.keys(), ...(there?.keys() ?? [])])].sort((a, b) => order(a) - order(b));
  return all.map((ending) => ({ ending, chance: here.get(ending) ?? 0, ...(there && { present: there.get(ending) ?? 0 }) }));
}

function chances({ jumping_penalties = [], elimination_chance }: Partial<Forecast>): Map<Ending["ending"], number> {
  const found = new Map<Ending["ending"], number>(jumping_penalties.map(({ penalties, chance }) => [penalties, chance]));
  return elimination_chance === undefined ? found : found.set("not_completed", elimination_chance);
}

const order = (ending: Ending["ending"]): number => (ending === "not_completed" ? Infinity : ending);
