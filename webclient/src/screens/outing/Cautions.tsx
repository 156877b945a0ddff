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
  const outings = useRecords("outing");
  const [read, setRead] = useState(recall<boolean>(READ) ?? false);
  if (read || !outings || !isFirstOuting(outings, view.outing.record_id, view.attempts.length)) return null;
  const close = () => {
    remember(READ, true);
    setRead(true);
  };
  return (
    <Notice tone="attention" title={t("outing.caution_title")} actions={<Button onClick={close}>{t("outing.caution_read")}</Button>}>
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
