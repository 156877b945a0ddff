import { useState } from "preact/hooks";
import { Link } from "wouter-preact";

import { isLocal, sessionStanding } from "../../account/session.ts";
import { BigButton } from "../../parts/BigButton.tsx";
import { syncNow } from "../../sync/schedule.ts";
import { type SyncResult, syncState } from "../../sync/state.ts";
import { t } from "../../words/index.ts";

/** The button that sends and fetches now, and what came of it, in numbers. */
export function Sending() {
  const [asked, setAsked] = useState<"not" | "busy" | "other_tab" | "done">("not");
  const { phase, result, trouble } = syncState.value;
  const send = async () => {
    setAsked("busy");
    setAsked((await syncNow()) ? "done" : "other_tab");
  };
  if (isLocal.value) return <p>{t("local.only")} <Link href="/sign-in">{t("local.sign_in")}</Link></p>;
  const busy = asked === "busy" || phase !== "idle";
  return (
    <div class="section">
      <BigButton tone="main" disabled={busy} onClick={() => void send()}>{busy ? t("needs.sending") : t("needs.send_now")}</BigButton>
      <div role="status">
        {asked === "other_tab" && <p>{t("needs.other_tab")}</p>}
        {!busy && result && asked === "done" && resultSentences(result).map((sentence) => <p key={sentence}>{sentence}</p>)}
        {!busy && trouble && <p>{t(`needs.trouble_${trouble}`)}</p>}
      </div>
      {sessionStanding.value === "ended" && <p><Link class="button button--main" href="/sign-in">{t("settings.sign_in_again")}</Link></p>}
    </div>
  );
}

function resultSentences({ sent, received, held, refused, trouble }: SyncResult): string[] {
  if (sent + received + held + refused === 0) return trouble ? [] : [t("needs.did_nothing")];
  const sentences = [t("needs.did", { sent, received })];
  if (held) sentences.push(t("needs.did_held", { n: held }));
  if (refused) sentences.push(t("needs.did_refused", { n: refused }));
  return sentences;
}
