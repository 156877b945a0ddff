// A finding with what stands behind it: what the phone keeps, and far above the present level what the server sends.

import { useEffect, useState } from "preact/hooks";

import type { Finding, Standing } from "../../board/standing.ts";
import { logbookId } from "../../store/place.ts";
import { makeWire } from "../../sync/wire.ts";

export function useInFull(kept: Finding | undefined, at: { horseId: string; levelId: string }): Finding | undefined {
  const [full, setFull] = useState<Finding>();
  const wanted = kept && !kept.evidence ? kept.requirement_id : null;
  useEffect(() => {
    setFull(undefined);
    if (wanted) void fetchInFull(at, wanted).then(setFull);
  }, [wanted, at.horseId, at.levelId]);
  return full ?? kept;
}

/** Undefined without signal: then the screen goes on saying that the lines are not here. */
async function fetchInFull({ horseId, levelId }: { horseId: string; levelId: string }, wanted: string) {
  const path = `/api/logbooks/${logbookId.value}/horses/${horseId}/standings`;
  const reply = await makeWire().get<{ standings: Standing[] }>(path);
  if (reply.kind !== "ok") return undefined;
  const standing = reply.data.standings.find((each) => each.level_id === levelId);
  return standing?.findings.find((each) => each.requirement_id === wanted);
}
