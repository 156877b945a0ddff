import { useState } from "preact/hooks";
import { Link } from "wouter-preact";

import { Icon } from "../../parts/Icon.tsx";
import { toast } from "../../parts/toast.ts";
import { move } from "../../recording/reorder.ts";
import { edit, type SavedRecord } from "../../store/book.ts";
import { t } from "../../words/index.ts";
import { fenceBrief } from "../outing/names.ts";

interface Props {
  fences: SavedRecord<"fence">[];
  mayWrite: boolean;
}

/** The fences in riding order; buttons move one up or down, for dragging needs a bare and steady finger. */
export function FenceOrder({ fences, mayWrite }: Props) {
  const [moved, setMoved] = useState("");
  const shift = async (at: number, by: -1 | 1) => {
    const places = move(fences, at, by);
    const shown = (id: string) => fences.find((fence) => fence.record_id === id)!;
    try {
      for (const { record_id, order } of places) await edit(shown(record_id), { order });
    } catch {
      return toast(t("fence.not_saved"));
    }
    setMoved(t("field.moved", { label: fences[at]!.body.label, place: at + by + 1 }));
  };
  if (!fences.length) return <p class="empty">{t("field.no_fences")}</p>;
  return (
    <>
      <p class="unseen" role="status" aria-live="polite">{moved}</p>
      <ol class="rows">
        {fences.map((fence, at) => <FenceLine fence={fence} first={at === 0} last={at === fences.length - 1} onMove={mayWrite ? (by) => void shift(at, by) : null} key={fence.record_id} />)}
      </ol>
    </>
  );
}

interface LineProps {
  fence: SavedRecord<"fence">;
  first: boolean;
  last: boolean;
  onMove: ((by: -1 | 1) => void) | null;
}

function FenceLine({ fence, first, last, onMove }: LineProps) {
  const { label, favourite } = fence.body;
  return (
    <li class="row order-row">
      <Link class="row__link" href={`/fence/${fence.record_id}`}>
        <span class="row__words">
          <span class="row__title">{label}{favourite && <span aria-hidden="true"> ★</span>}</span>
          <span class="row__detail">{fenceBrief(fence.body)}</span>
        </span>
      </Link>
      {onMove && (
        <span class="order-row__buttons">
          <button type="button" class="icon-button order-row__up" disabled={first} aria-label={t("field.move_up", { label })} onClick={() => onMove(-1)}><Icon name="back" /></button>
          <button type="button" class="icon-button order-row__down" disabled={last} aria-label={t("field.move_down", { label })} onClick={() => onMove(1)}><Icon name="forward" /></button>
        </span>
      )}
    </li>
  );
}
