import type { ComponentChildren } from "preact";
import { Link } from "wouter-preact";

import { Icon } from "../../parts/Icon.tsx";
import type { SavedRecord } from "../../store/book.ts";
import { t } from "../../words/index.ts";
import type { OutingView } from "./useOuting.ts";

/** On to the next fence in riding order, or back to the one before. */
export function Neighbours({ view, fence }: { view: OutingView; fence: SavedRecord<"fence"> }) {
  const at = view.fences.indexOf(fence);
  const outing_id = view.outing.record_id;
  return (
    <nav class="neighbours" aria-label={t("outing.neighbours")}>
      <To fence={view.fences[at - 1]} outing_id={outing_id} says={t("outing.before")}><Icon name="back" /></To>
      <To fence={view.fences[at + 1]} outing_id={outing_id} says={t("outing.after")}><Icon name="forward" /></To>
    </nav>
  );
}

interface ToProps {
  fence: SavedRecord<"fence"> | undefined;
  outing_id: string;
  says: string;
  children: ComponentChildren;
}

function To({ fence, outing_id, says, children }: ToProps) {
  if (!fence) return <span class="neighbours__none" />;
  return (
    <Link class="big-button neighbours__link" href={`/outing/${outing_id}/fence/${fence.record_id}`} replace>
      {children}
      <span class="unseen">{says}</span>
      <span class="neighbours__name">{fence.body.label}</span>
    </Link>
  );
}
