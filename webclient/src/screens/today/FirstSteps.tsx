import { Link } from "wouter-preact";

import { Notice } from "../../parts/Notice.tsx";
import { useRole } from "../../store/book.ts";
import { syncState } from "../../sync/state.ts";
import { t } from "../../words/index.ts";

/** An empty logbook: what to do first, or that it is still being fetched. */
export function FirstSteps() {
  const role = useRole();
  if (syncState.value.phase === "fetching") return <p class="quiet">{t("today.fetching")}</p>;
  if (role !== "rider") return <p class="quiet">{t("today.no_horse_yet")}</p>;
  return (
    <Notice title={t("today.welcome")} actions={<Link class="button button--main" href="/horse/new">{t("today.add_horse")}</Link>}>
      <p>{t("today.welcome_words")}</p>
    </Notice>
  );
}
