import { useState } from "preact/hooks";
import { Link } from "wouter-preact";

import { openOwnLogbook } from "../../account/sign.ts";
import { Button } from "../../parts/BigButton.tsx";
import { Screen } from "../../parts/Screen.tsx";
import { t } from "../../words/index.ts";
import { useSigning } from "../sign-in/useSigning.ts";

/** For somebody who is signed in and in no logbook (any more): how to get into one. */
export function NoLogbook() {
  const [opened, setOpened] = useState(false);
  const opening = useSigning(openOwnLogbook, () => setOpened(true));
  return (
    <Screen title={t("people.no_logbook")}>
      <p>{t("people.no_logbook_about")}</p>
      <form class="form" onSubmit={opening.submit}>
        {opening.trouble && <p class="text-box__trouble" role="alert">{opening.trouble}</p>}
        <div class="buttons">
          <Button tone="main" type="submit" disabled={opening.busy || opened}>{t("people.open_own")}</Button>
          <Link class="button" href="/account">{t("people.account")}</Link>
        </div>
      </form>
    </Screen>
  );
}
