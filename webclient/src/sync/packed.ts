// Standings come packed: lines of evidence and bars once for each horse, named by their places in a table. Here
// they are put back, so that every screen finds the whole shape. docs/protocol.md describes both.

import type { EvidenceLine, Finding } from "../board/standing.ts";

type Tables<Thing> = Record<string, Thing[]>;
type PackedFinding = Omit<Finding, "evidence" | "bar"> & { evidence: number[] | null; bar: number };

export interface Packed {
  evidence?: Tables<Omit<EvidenceLine, "weight">>;
  bars?: Tables<NonNullable<Finding["bar"]>>;
}

/** The findings of one horse's standing in full; where the lines were left out, `evidence` stays null. */
export function unpack(findings: unknown[], horseId: string, { evidence, bars }: Packed): unknown[] {
  const lines = evidence?.[horseId];
  if (!lines) return findings;
  return (findings as PackedFinding[]).map((finding) => ({
    ...finding, evidence: finding.evidence && linesOf(finding.evidence, lines), bar: bars?.[horseId]?.[finding.bar],
  }));
}

function linesOf(places: number[], lines: Omit<EvidenceLine, "weight">[]): EvidenceLine[] {
  const found: EvidenceLine[] = [];
  for (let at = 0; at < places.length; at += 2) found.push({ ...lines[places[at]!]!, weight: places[at + 1]! });
  return found;
}
