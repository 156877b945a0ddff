import { Link } from "wouter-preact";

import { Notice } from "../parts/Notice.tsx";
import { blockedByTab } from "../store/open.ts";
import { lostStore } from "../store/lost.ts";
import { notSaved } from "../store/trouble.ts";
import { t } from "../words/index.ts";

/** What must be said on every screen about the phone's storage: not saved, kept waiting, emptied. */
export function StoreNotices() {
  return (
    <>
      {notSaved.value && (
        <Notice tone="stop" title={t("store.not_saved_title")} urgent actions={<Link class="button" href="/settings">{t("store.room_and_export")}</Link>}>
          <p>{t(`store.not_saved_${notSaved.value}`)}</p>
        </Notice>
      )}
      {blockedByTab.value && <Notice tone="attention" urgent><p>{t("store.blocked")}</p></Notice>}
      {lostStore.value && (
        <Notice tone="attention" title={t("store.emptied_title")} actions={<button type="button" class="button" onClick={() => (lostStore.value = false)}>{t("frame.close")}</button>}>
          <p>{t("store.emptied")}</p>
        </Notice>
      )}
    </>
  );
}
