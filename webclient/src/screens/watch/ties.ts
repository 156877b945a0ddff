// Attempts carry the canter in which they were met and the moment on its clock.

import type { Attempt } from "../../entries/bodies.ts";
import { edit } from "../../store/book.ts";
import { here } from "../../store/place.ts";
import { findRecords } from "../../store/read.ts";

/** The run goes on under another id: the fences met so far go with it. */
export async function moveTies(outing_id: string, from_id: string, to_id: string): Promise<void> {
  for (const { record_id, body } of await findRecords(here(), "attempt", { outing_id })) {
    const attempt = body as unknown as Attempt;
    if (attempt.canter_id === from_id) await edit({ record_id, kind: "attempt", body: attempt }, { canter_id: to_id });
  }
}
