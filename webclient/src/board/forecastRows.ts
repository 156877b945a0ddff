// The ways a typical course may end, with their chances, for the picture.

import type { Forecast } from "./standing.ts";

export interface Ending {
  ending: number | "not_completed";
  chance: number;
}

/** Clear first, then by penalties, not completed last. */
export function endings(forecast: Forecast): Ending[] {
  const finished = [...(forecast.jumping_penalties ?? [])].sort((a, b) => a.penalties - b.penalties);
  const rows: Ending[] = finished.map(({ penalties, chance }) => ({ ending: penalties, chance }));
  if (forecast.elimination_chance !== undefined) rows.push({ ending: "not_completed", chance: forecast.elimination_chance });
  return rows;
}
