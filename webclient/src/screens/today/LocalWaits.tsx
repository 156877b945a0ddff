import { useEffect, useState } from "preact/hooks";
import { Link } from "wouter-preact";

import { clearWhenSent } from "../../account/keep.ts";
import { localBegun, lookForLocal } from "../../account/local.ts";
import { isLocal } from "../../account/session.ts";
import { noteMistake } from "../../health/mistakes.ts";
import { Notice } from "../../parts/Notice.tsx";
import { openDb } from "../../store/place.ts";
import { syncState } from "../../sync/state.ts";
import { t } from "../../words/index.ts";

/** Records from before anybody signed in: offered, never taken without asking. Gone once the server has them all. */
export function LocalWaits() {
  const [done, setDone] = useState(0);
  const { waiting } = syncState.value;
  const there = localBegun.value && !isLocal.value;
  useEffect(() => void lookForLocal(), []);
  useEffect(() => {
    if (there && waiting === 0) void clearWhenSent(openDb.value!).then((n) => n && setDone(n), noteMistake);
  }, [there, waiting]);
  if (done) return <Notice tone="good"><p>{t("local.done", { n: done })}</p></Notice>;
  return there ? <Notice actions={<Link class="button" href="/keep">{t("local.look")}</Link>}><p>{t("local.waits")}</p></Notice> : null;
}
