import { useState } from "preact/hooks";

import { session } from "../../account/session.ts";
import { Button } from "../../parts/BigButton.tsx";
import { Section } from "../../parts/Card.tsx";
import { Notice } from "../../parts/Notice.tsx";
import { Screen } from "../../parts/Screen.tsx";
import { TextBox } from "../../parts/TextBox.tsx";
import { showDay } from "../../words/dates.ts";
import { t } from "../../words/index.ts";
import { useSigning } from "../sign-in/useSigning.ts";
import { troubleOf, useAsked, wire } from "./ask.ts";
import { EndAccount } from "./EndAccount.tsx";

interface SignInLine {
  id: string;
  label: string;
  here: boolean;
  signed_in_at: string;
  last_seen_at: string;
}

/** One's own account: where it is signed in, a new password, the end of it. */
export function AccountScreen() {
  return (
    <Screen title={t("people.account")} back="/settings">
      <p class="quiet">{t("settings.signed_in", { name: session.value!.account!.display_name })}</p>
      <Section title={t("people.sign_ins")}><SignIns /></Section>
      <Section title={t("people.new_password")}><NewPassword /></Section>
      <Section title={t("people.end")}><EndAccount /></Section>
    </Screen>
  );
}

function SignIns() {
  const { data, trouble, again } = useAsked<{ sign_ins: SignInLine[] }>("/api/account/sign-ins");
  const [failed, setFailed] = useState<string | null>(null);
  const end = async (id: string) => {
    setFailed(troubleOf(await wire.remove(`/api/account/sign-ins/${id}`)));
    again();
  };
  const said = trouble ?? failed;
  return (
    <>
      {said && <Notice tone="attention" urgent actions={<Button onClick={again}>{t("frame.try_again")}</Button>}><p>{said}</p></Notice>}
      <ul class="rows">
        {data?.sign_ins.map((one) => (
          <li class="person" key={one.id}>
            <p><strong>{one.label || t("people.some_browser")}</strong>{one.here && ` (${t("people.here")})`}<br /><span class="quiet">{t("people.since", { date: showDay(one.signed_in_at.slice(0, 10)), seen: showDay(one.last_seen_at.slice(0, 10)) })}</span></p>
            {!one.here && <div class="buttons"><Button onClick={() => void end(one.id)}>{t("people.sign_out_there")}</Button></div>}
          </li>
        ))}
      </ul>
      <p class="quiet">{t("people.sign_out_there_about")}</p>
    </>
  );
}

function NewPassword() {
  const [password, setPassword] = useState("");
  const [new_password, setNew] = useState("");
  const [done, setDone] = useState(false);
  const changing = useSigning(async () => {
    const reply = await wire.post("/api/account/password", { password, new_password });
    return reply.kind === "ok" ? null : reply.kind === "offline" ? "offline" : reply.error;
  }, () => setDone(true));
  if (done) return <p role="status">{t("people.password_changed")}</p>;
  return (
    <form class="form" onSubmit={changing.submit}>
      <TextBox label={t("people.old_password")} type="password" value={password} onInput={setPassword} trouble={changing.troubleAt("password")} autoComplete="current-password" required enterKeyHint="next" />
      <TextBox label={t("people.new_password")} hint={t("sign.password_hint")} type="password" value={new_password} onInput={setNew} trouble={changing.troubleAt("new_password")} autoComplete="new-password" required enterKeyHint="go" />
      {changing.trouble && <Notice tone="stop" urgent><p>{changing.trouble}</p></Notice>}
      <div class="buttons"><Button tone="main" type="submit" disabled={changing.busy}>{changing.busy ? t("sign.busy") : t("people.change_password")}</Button></div>
    </form>
  );
}
