import { useState } from "preact/hooks";

import { describe } from "../../describe/describe.ts";
import { kindWords } from "../../describe/Described.tsx";
import { Button } from "../../parts/BigButton.tsx";
import { Section } from "../../parts/Card.tsx";
import { toast } from "../../parts/toast.ts";
import { putBack, useRole } from "../../store/book.ts";
import { useLive } from "../../store/live.ts";
import { here } from "../../store/place.ts";
import { findTakenBack } from "../../store/read.ts";
import { showDay } from "../../words/dates.ts";
import { t } from "../../words/index.ts";

const SHOWN = 15;

/** What was taken back, newest first; each can be put back, however long ago it was: nothing is ever thrown away. */
export function Bin() {
  const [most, setMost] = useState(SHOWN);
  const found = useLive(() => findTakenBack(here(), most + 1), [most]);
  const gone = found?.slice(0, most);
  const writes = useRole() !== "reader";
  if (!gone?.length || !writes) return null;
  const back = (record_id: string) => putBack(record_id).then(() => toast(t("needs.put_back_done")), () => undefined);
  return (
    <Section title={t("needs.bin")}>
      <ul class="rows">
        {gone.map(({ row, last }) => (
          <li class="row row--plain" key={row.record_id}>
            <span>{[kindWords(row.kind), last && describe(row.kind, last, null), showDay(row.day)].filter(Boolean).join(" · ")}</span>
            <Button onClick={() => void back(row.record_id)}>{t("needs.put_back")}</Button>
          </li>
        ))}
      </ul>
      {found!.length > most && <div class="buttons"><Button onClick={() => setMost(most * 4)}>{t("needs.bin_more")}</Button></div>}
      <p class="quiet">{t("needs.bin_about")}</p>
    </Section>
  );
}
