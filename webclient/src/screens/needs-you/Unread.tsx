import { Notice } from "../../parts/Notice.tsx";
import { findNewest } from "../../store/read.ts";
import { useLive } from "../../store/live.ts";
import { here } from "../../store/place.ts";
import { t } from "../../words/index.ts";

/** Records of a newer version than this one: kept untouched until the update. */
export function Unread() {
  const unread = useLive(async () => (await findNewest(here(), "unread", 1000)).length, []);
  if (!unread) return null;
  return <Notice title={t("needs.unread")}><p>{t("needs.unread_words", { n: unread })}</p></Notice>;
}
