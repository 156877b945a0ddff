// The board's order: levels from low to high, with the one a pair is working towards marked.

import type { Finding, FindingPhase, Standing } from "./standing.ts";
import { FINDING_PHASES } from "./standing.ts";

/** Standings of one horse, lowest level first. */
export function ladder(standings: readonly Standing[], horseId: string): Standing[] {
  return standings.filter((each) => each.horse_id === horseId).sort((a, b) => a.level_order - b.level_order);
}

/** The level to open first: the one above the present level, else the lowest that is not complete. */
export function aimOf(levels: readonly Standing[], presentLevelId: string | null): Standing | undefined {
  const present = levels.findIndex((each) => each.level_id === presentLevelId);
  if (present >= 0) return levels[present + 1] ?? levels[present];
  return levels.find((each) => !each.summary.complete) ?? levels.at(-1);
}

/** Findings by phase in the board's order; phases without findings are left out. */
export function byPhase(findings: readonly Finding[]): { phase: FindingPhase; findings: Finding[] }[] {
  return FINDING_PHASES.map((phase) => ({ phase, findings: findings.filter((each) => each.phase === phase) })).filter(
    (group) => group.findings.length > 0,
  );
}

/** What to look at first within a phase: trouble, then gaps, then what stands. */
const URGENCY = ["on_hold", "shaky", "gone_stale", "untried", "building", "shown"] as const;

export function mostUrgentFirst(findings: readonly Finding[]): Finding[] {
  return [...findings].sort((a, b) => URGENCY.indexOf(a.state) - URGENCY.indexOf(b.state));
}

/** The levels up to one above the aim, and those further off: nobody reads a whole ladder in a field. */
export function withinReach(levels: readonly Standing[], aim: Standing | undefined): { near: Standing[]; beyond: Standing[] } {
  const last = aim ? levels.indexOf(aim) + 1 : levels.length - 1;
  return { near: levels.slice(0, last + 1), beyond: levels.slice(last + 1) };
}
