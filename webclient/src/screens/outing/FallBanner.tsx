import { useState } from "preact/hooks";

import { Button } from "../../parts/BigButton.tsx";
import { Notice } from "../../parts/Notice.tsx";
import { fallsAmong } from "../../recording/cautions.ts";
import { t } from "../../words/index.ts";
import { StopWords } from "./StopNotice.tsx";
import type { OutingView } from "./useOuting.ts";

/** Stands for the rest of an outing with a fall: this outing is over. */
export function FallBanner({ view }: { view: OutingView }) {
  const [open, setOpen] = useState(false);
  if (!fallsAmong(view.attempts).length) return null;
  return (
    <Notice
      tone="stop" title={t("outing.fall_title")}
      actions={<Button onClick={() => setOpen(!open)} pressed={open}>{t("outing.fall_read_again")}</Button>}
    >
      <p>{t("outing.fall_words")}</p>
      {open && <StopWords />}
    </Notice>
  );
}
