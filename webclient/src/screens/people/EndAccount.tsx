import { useState } from "preact/hooks";

import { logbooks } from "../../account/session.ts";
import { leaveForGood } from "../../account/sign.ts";
import { exportAll } from "../../copies/exportAll.ts";
import { Button } from "../../parts/BigButton.tsx";
import { Notice } from "../../parts/Notice.tsx";
import { TextBox } from "../../parts/TextBox.tsx";
import { useLive } from "../../store/live.ts";
import { openDb } from "../../store/place.ts";
import { unsentEntries } from "../../store/unsent.ts";
import { t } from "../../words/index.ts";
import { useSigning } from "../sign-in/useSigning.ts";

/** Deleting the account: what goes is said first, what was never sent is named, and a copy offered. */
export function EndAccount() {
  const [asked, setAsked] = useState(false);
  const [password, setPassword] = useState("");
  const unsent = useLive(() => unsentEntries(openDb.value!), [])?.length ?? 0;
  const ending = useSigning(() => leaveForGood(password), () => location.assign("/"));
  const own = logbooks.value.find((book) => book.role === "rider");
  if (!asked) return <div class="buttons"><Button onClick={() => setAsked(true)}>{t("people.end_account")}</Button></div>;
  return (
    <Notice tone="stop" title={t("people.end_title")}>
      <p>{own ? t("people.end_logbook", { title: own.title }) : t("people.end_no_logbook")} {t("people.end_elsewhere")}</p>
      {unsent > 0 && <p><strong>{t("people.end_unsent", { n: unsent })}</strong></p>}
      <div class="buttons"><Button onClick={() => void exportAll()}>{t("settings.export")}</Button></div>
      <form class="form" onSubmit={ending.submit}>
        <TextBox label={t("people.old_password")} type="password" value={password} onInput={setPassword} trouble={ending.troubleAt("password")} autoComplete="current-password" required enterKeyHint="go" />
        {ending.trouble && <p class="text-box__trouble" role="alert">{ending.trouble}</p>}
        <div class="buttons">
          <Button tone="stop" type="submit" disabled={ending.busy}>{ending.busy ? t("sign.busy") : t("people.end_for_good")}</Button>
          <Button tone="quiet" onClick={() => setAsked(false)}>{t("frame.cancel")}</Button>
        </div>
      </form>
    </Notice>
  );
}
