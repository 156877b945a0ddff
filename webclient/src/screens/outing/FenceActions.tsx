import { Link } from "wouter-preact";

import { toast } from "../../parts/toast.ts";
import { edit, type SavedRecord } from "../../store/book.ts";
import { t } from "../../words/index.ts";

/** Beside the fence's name: keep it among the favourites, change what is known of it. */
export function FenceActions({ fence, outing_id }: { fence: SavedRecord<"fence">; outing_id: string }) {
  const { favourite } = fence.body;
  const toggle = () => edit(fence, { favourite: !favourite }).catch(() => toast(t("fence.not_saved")));
  return (
    <>
      <button type="button" class="icon-button star-button" aria-pressed={favourite} aria-label={t("outing.favourite")} onClick={() => void toggle()}>
        <span aria-hidden="true">{favourite ? "★" : "☆"}</span>
      </button>
      <Link class="button" href={`/fence/${fence.record_id}?outing=${outing_id}`}>{t("outing.edit_fence")}</Link>
    </>
  );
}
