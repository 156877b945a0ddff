import { useState } from "preact/hooks";
import { useLocation } from "wouter-preact";

import { isLocal, session } from "../../account/session.ts";
import { takeUp } from "../../account/sign.ts";
import { Button } from "../../parts/BigButton.tsx";
import { Notice } from "../../parts/Notice.tsx";
import { Screen } from "../../parts/Screen.tsx";
import { TextBox } from "../../parts/TextBox.tsx";
import { showDay } from "../../words/dates.ts";
import { t } from "../../words/index.ts";
import { SignInForm } from "../sign-in/SignInForm.tsx";
import { useSigning } from "../sign-in/useSigning.ts";
import { useAsked } from "./ask.ts";

interface Offer {
  title: string;
  inviter: string;
  role: "coach" | "scribe" | "reader";
  expires_at: string;
}

/** Where an invitation's link leads: whose logbook, as what, and joining with an account or making one. */
export function InvitedScreen({ params: { code } }: { params: { code: string } }) {
  const { data: offer, trouble, again } = useAsked<Offer>(`/api/invitations/${encodeURIComponent(code)}`);
  return (
    <Screen title={t("people.invited")} back="/">
      {trouble && <Notice tone="attention" urgent actions={<Button onClick={again}>{t("frame.try_again")}</Button>}><p>{trouble}</p></Notice>}
      {!offer && !trouble && <p class="quiet">{t("people.asking")}</p>}
      {offer && (
        <>
          <p>{t("people.offer", { name: offer.inviter || offer.title, title: offer.title, role: t(`role.${offer.role}`) })}</p>
          <p class="quiet">{t(`role.${offer.role}`)}: {t(`people.may_${offer.role}`)} {t("people.link_until", { date: showDay(offer.expires_at.slice(0, 10)) })}</p>
          {session.value?.account && !isLocal.value ? <Join code={code} /> : <Newcomer code={code} />}
        </>
      )}
    </Screen>
  );
}

function Join({ code }: { code: string }) {
  const [, navigate] = useLocation();
  const joining = useSigning(() => takeUp(code, {}), () => navigate("/", { replace: true }));
  return (
    <form class="form" onSubmit={joining.submit}>
      {joining.trouble && <Notice tone="stop" urgent><p>{joining.trouble}</p></Notice>}
      <div class="buttons"><Button tone="main" type="submit" disabled={joining.busy}>{t("people.join", { name: session.value!.account!.display_name })}</Button></div>
    </form>
  );
}

function Newcomer({ code }: { code: string }) {
  const [known, setKnown] = useState(false);
  if (known) return <SignInForm name="" done={() => setKnown(false)} />;
  return (
    <>
      <NewAccount code={code} />
      <div class="buttons"><Button tone="quiet" onClick={() => setKnown(true)}>{t("people.have_account")}</Button></div>
    </>
  );
}

function NewAccount({ code }: { code: string }) {
  const [, navigate] = useLocation();
  const [display_name, setDisplayName] = useState("");
  const [sign_in_name, setName] = useState("");
  const [password, setPassword] = useState("");
  const joining = useSigning(() => takeUp(code, { display_name, sign_in_name, password }), () => navigate("/", { replace: true }));
  return (
    <form class="form" onSubmit={joining.submit}>
      <TextBox label={t("sign.display_name")} hint={t("sign.display_name_hint")} value={display_name} onInput={setDisplayName} trouble={joining.troubleAt("display_name")} autoComplete="name" required enterKeyHint="next" />
      <TextBox label={t("sign.name")} hint={t("sign.name_hint")} value={sign_in_name} onInput={setName} trouble={joining.troubleAt("sign_in_name")} autoComplete="username" autoCapitalize="none" required enterKeyHint="next" />
      <TextBox label={t("sign.password")} hint={t("sign.password_hint")} type="password" value={password} onInput={setPassword} trouble={joining.troubleAt("password")} autoComplete="new-password" required enterKeyHint="go" />
      {joining.trouble && <Notice tone="stop" urgent><p>{joining.trouble}</p></Notice>}
      <div class="buttons"><Button tone="main" type="submit" disabled={joining.busy}>{joining.busy ? t("sign.busy") : t("people.make_and_join")}</Button></div>
    </form>
  );
}
