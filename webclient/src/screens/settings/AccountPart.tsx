import { useState } from "preact/hooks";
import { Link } from "wouter-preact";

import { isLocal, session, sessionStanding } from "../../account/session.ts";
import { Button } from "../../parts/BigButton.tsx";
import { Row, Rows, Section } from "../../parts/Card.tsx";
import { Notice } from "../../parts/Notice.tsx";
import { t } from "../../words/index.ts";
import { LocalPart } from "./LocalPart.tsx";
import { SignOut } from "./SignOut.tsx";

/** Who is signed in, and the way out. */
export function AccountPart() {
  const [leaving, setLeaving] = useState(false);
  const account = session.value?.account;
  if (!account) return null;
  if (isLocal.value) return <LocalPart />;
  return (
    <Section title={t("settings.account")}>
      <p>{t("settings.signed_in", { name: account.display_name })}</p>
      {sessionStanding.value === "ended" && (
        <Notice tone="attention" actions={<Link class="button button--main" href="/sign-in">{t("settings.sign_in_again")}</Link>}>
          <p>{t("settings.ended")}</p>
        </Notice>
      )}
      <Rows>{[<Row href="/people" title={t("people.title")} key="people" />, <Row href="/account" title={t("people.account")} key="account" />]}</Rows>
      {leaving ? <SignOut cancel={() => setLeaving(false)} /> : <div class="buttons"><Button onClick={() => setLeaving(true)}>{t("settings.sign_out")}</Button></div>}
    </Section>
  );
}
