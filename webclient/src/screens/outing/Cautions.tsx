import { useState } from "preact/hooks";

import { Button } from "../../parts/BigButton.tsx";
import { Notice } from "../../parts/Notice.tsx";
import { isFirstOuting } from "../../recording/cautions.ts";
import { useRecords } from "../../store/book.ts";
import { recall, remember } from "../../store/little.ts";
import { t } from "../../words/index.ts";
import type { OutingView } from "./useOuting.ts";

const READ = "cautions_read";

/** Before the very first fence: what to wear, whom to have there, what to look at, when to stop. */
export function Cautions({ view }: { view: OutingView }) {
  const [read, setRead] = useState(recall<boolean>(READ) ?? false);
  const close = () => {
    remember(READ, true);
    setRead(true);
  };
  return read || view.attempts.length > 0 ? null : <BeforeTheFirst outing_id={view.outing.record_id} onRead={close} />;
}

function BeforeTheFirst({ outing_id, onRead }: { outing_id: string; onRead: () => void }) {
  const outings = useRecords("outing");
  if (!outings || !isFirstOuting(outings, outing_id)) return null;
  return (
    <Notice tone="attention" title={t("outing.caution_title")} actions={<Button onClick={onRead}>{t("outing.caution_read")}</Button>}>
      <ul class="bullets">
        <li>{t("outing.caution_kit")}</li>
        <li>{t("outing.caution_alone")}</li>
        <li>{t("outing.caution_ground")}</li>
        <li>{t("outing.caution_stop")}</li>
        <li>{t("outing.caution_decide")}</li>
      </ul>
    </Notice>
  );
}
