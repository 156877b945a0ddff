import { useState } from "preact/hooks";
import { useLocation } from "wouter-preact";

import { signOut } from "../../account/sign.ts";
import { exportAll } from "../../copies/exportAll.ts";
import { Button } from "../../parts/BigButton.tsx";
import { Notice } from "../../parts/Notice.tsx";
import { Described } from "../../describe/Described.tsx";
import type { EntryRow } from "../../store/db.ts";
import { useLive } from "../../store/live.ts";
import { openDb } from "../../store/place.ts";
import { unsentEntries } from "../../store/unsent.ts";
import { syncNow } from "../../sync/schedule.ts";
import { syncState } from "../../sync/state.ts";
import { t } from "../../words/index.ts";

const NAMED = 8;

/** Signing out never removes what was not sent: it is named, and can be sent, exported or kept. */
export function SignOut({ cancel }: { cancel: () => void }) {
  const unsent = useLive(() => unsentEntries(openDb.value!), []);
  const [, navigate] = useLocation();
  const leave = async (removeCopy: boolean) => {
    await signOut(removeCopy);
    navigate("/", { replace: true });
  };
  if (!unsent) return null;
  return unsent.length ? <Unsent entries={unsent} leave={() => void leave(false)} cancel={cancel} /> : <AllSent leave={(remove) => void leave(remove)} cancel={cancel} />;
}

function AllSent({ leave, cancel }: { leave: (removeCopy: boolean) => void; cancel: () => void }) {
  return (
    <Notice
      title={t("settings.out_title")}
      actions={
        <>
          <Button tone="main" onClick={() => leave(true)}>{t("settings.out_remove")}</Button>
          <Button onClick={() => leave(false)}>{t("settings.out_keep_copy")}</Button>
          <Button tone="quiet" onClick={cancel}>{t("frame.cancel")}</Button>
        </>
      }
    >
      <p>{t("settings.out_all_sent")}</p>
    </Notice>
  );
}

function Unsent({ entries, leave, cancel }: { entries: EntryRow[]; leave: () => void; cancel: () => void }) {
  const [busy, setBusy] = useState(false);
  const send = async () => {
    setBusy(true);
    await syncNow();
    setBusy(false);
  };
  const { trouble } = syncState.value;
  return (
    <Notice
      tone="attention" title={t("settings.out_title")}
      actions={
        <>
          <Button tone="main" disabled={busy} onClick={() => void send()}>{busy ? t("needs.sending") : t("settings.out_send")}</Button>
          <Button onClick={() => void exportAll(true)}>{t("settings.out_export")}</Button>
          <Button onClick={leave}>{t("settings.out_keep")}</Button>
          <Button tone="quiet" onClick={cancel}>{t("frame.cancel")}</Button>
        </>
      }
    >
      <p>{t("settings.out_unsent", { n: entries.length })}</p>
      <ul class="points">{entries.slice(0, NAMED).map((entry) => <li key={entry.id}><Described entry={entry} /></li>)}</ul>
      {entries.length > NAMED && <p>{t("settings.out_more", { n: entries.length - NAMED })}</p>}
      {trouble && !busy && <p><strong>{t(`needs.trouble_${trouble}`)}</strong></p>}
      <p class="quiet">{t("settings.out_keep_words")}</p>
    </Notice>
  );
}
