import { useEffect } from "preact/hooks";
import { Link } from "wouter-preact";

import { clearWhenSent } from "../../account/keep.ts";
import { noteMistake } from "../../health/mistakes.ts";
import { Notice } from "../../parts/Notice.tsx";
import { toast } from "../../parts/toast.ts";
import { openDb } from "../../store/place.ts";
import { syncState } from "../../sync/state.ts";
import { t } from "../../words/index.ts";

/** Records from before anybody signed in: offered, never taken without asking. Gone once the server has them all. */
export function LocalWaits() {
  const { waiting } = syncState.value;
  useEffect(() => {
    if (waiting === 0) void clearWhenSent(openDb.value!).then((n) => n && toast(t("local.done", { n })), noteMistake);
  }, [waiting]);
  return <Notice actions={<Link class="button" href="/keep">{t("local.look")}</Link>}><p>{t("local.waits")}</p></Notice>;
}
