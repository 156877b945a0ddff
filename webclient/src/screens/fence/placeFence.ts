import type { Fence } from "../../entries/bodies.ts";
import { toast } from "../../parts/toast.ts";
import { type Position, positionOf } from "../../recording/position.ts";
import { edit } from "../../store/book.ts";
import { here } from "../../store/place.ts";
import { findRecord } from "../../store/read.ts";
import { t } from "../../words/index.ts";
import { positionWords } from "./PositionPart.tsx";

/** Keeps where a fence stands and says so, with its undo. */
export async function placeFence(record_id: string, part: Partial<Position>): Promise<void> {
  const [before, after] = (await put(record_id, part).catch(() => null)) ?? [];
  if (!before || !after) return toast(t("fence.not_saved"));
  toast(t("fence.placed", { label: after.label, where: positionWords(after) }), () => void put(record_id, positionOf(before)));
}

// beside whatever else is said of the fence by now: standing takes a while
async function put(record_id: string, part: Partial<Position>): Promise<[Fence, Fence] | null> {
  const before = (await findRecord(here(), record_id))!.body as unknown as Fence;
  const after = await edit({ record_id, kind: "fence", body: before }, part);
  return after && [before, after.body];
}
