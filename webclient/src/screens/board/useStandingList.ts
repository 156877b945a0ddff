// The standings on this phone, as what they are: the server's own shape.

import type { Standing } from "../../board/standing.ts";
import { useStandings } from "../../store/book.ts";

export function useStandingList(horseId?: string): Standing[] | undefined {
  return useStandings(horseId) as Standing[] | undefined;
}

export function useStanding(horseId: string, levelId: string): Standing | null | undefined {
  const standings = useStandingList(horseId);
  if (!standings) return undefined;
  return standings.find((each) => each.level_id === levelId) ?? null;
}
