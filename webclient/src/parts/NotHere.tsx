import { Link } from "wouter-preact";

import { t } from "../words/index.ts";
import { Screen } from "./Screen.tsx";

/** For an address that leads nowhere, or to something that is not on this phone yet. */
export function NotHere() {
  return (
    <Screen title={t("frame.not_here_title")} back="/">
      <p>{t("frame.not_here")}</p>
      <p><Link class="button button--main" href="/">{t("frame.to_today")}</Link></p>
    </Screen>
  );
}
