import { useState } from "preact/hooks";

import { makeFirstAccount } from "../../account/sign.ts";
import { Button } from "../../parts/BigButton.tsx";
import { Notice } from "../../parts/Notice.tsx";
import { TextBox } from "../../parts/TextBox.tsx";
import { t } from "../../words/index.ts";
import { useSigning } from "./useSigning.ts";

export function FirstAccountForm({ done }: { done: () => void }) {
  const [display_name, setDisplayName] = useState("");
  const [sign_in_name, setName] = useState("");
  const [password, setPassword] = useState("");
  const signing = useSigning(() => makeFirstAccount({ display_name, sign_in_name, password }), done);
  return (
    <form class="form" onSubmit={signing.submit}>
      <TextBox label={t("sign.display_name")} hint={t("sign.display_name_hint")} value={display_name} onInput={setDisplayName} trouble={signing.troubleAt("display_name")} autoComplete="name" required enterKeyHint="next" />
      <TextBox label={t("sign.name")} hint={t("sign.name_hint")} value={sign_in_name} onInput={setName} trouble={signing.troubleAt("sign_in_name")} autoComplete="username" autoCapitalize="none" required enterKeyHint="next" />
      <TextBox label={t("sign.password")} hint={t("sign.password_hint")} type="password" value={password} onInput={setPassword} trouble={signing.troubleAt("password")} autoComplete="new-password" required enterKeyHint="go" />
      {signing.trouble && <Notice tone="stop" urgent><p>{signing.trouble}</p></Notice>}
      <div class="buttons"><Button tone="main" type="submit" disabled={signing.busy}>{signing.busy ? t("sign.busy") : t("sign.make_account")}</Button></div>
    </form>
  );
}
