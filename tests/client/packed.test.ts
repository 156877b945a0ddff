// What comes packed is put back as the server has it in full; the server runs the same vector.

import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import test from "node:test";

import { unpack } from "../../webclient/src/sync/packed.ts";

const vector = JSON.parse(readFileSync(new URL("../../fixtures/contract/packed_standings.json", import.meta.url), "utf8"));

test("every finding is whole again, but for what stayed on the server", () => {
  const full = Object.values(vector.horses).flat() as any[];
  for (const [place, standing] of vector.packed.standings.entries()) {
    const wanted = full[place].findings.map((finding: any, at: number) => {
      if (standing.findings[at].evidence) return finding;
      const { explanation, ...rest } = finding;
      assert.ok(explanation);
      return { ...rest, evidence: null };
    });
    assert.deepEqual(unpack(standing.findings, standing.horse_id, vector.packed), wanted);
  }
});

test("an older server's standings are whole already", () => {
  const [standing] = vector.horses.one;
  assert.deepEqual(unpack(standing.findings, "one", {}), standing.findings);
});
