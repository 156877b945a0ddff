import { useState } from "preact/hooks";

import { signIn } from "../../account/sign.ts";
import { Button } from "../../parts/BigButton.tsx";
import { Notice } from "../../parts/Notice.tsx";
import { TextBox } from "../../parts/TextBox.tsx";
import { t } from "../../words/index.ts";
import { useSigning } from "./useSigning.ts";

export function SignInForm({ name, done }: { name: string; done: () => void }) {
  const [sign_in_name, setName] = useState(name);
  const [password, setPassword] = useState("");
  const signing = useSigning(() => signIn({ sign_in_name, password }), done);
  return (
    <form class="form" onSubmit={signing.submit}>
      <TextBox label={t("sign.name")} value={sign_in_name} onInput={setName} autoComplete="username" autoCapitalize="none" required enterKeyHint="next" />
      <TextBox label={t("sign.password")} type="password" value={password} onInput={setPassword} autoComplete="current-password" required enterKeyHint="go" />
      {signing.trouble && <Notice tone="stop" urgent><p>{signing.trouble}</p></Notice>}
      <div class="buttons"><Button tone="main" type="submit" disabled={signing.busy}>{signing.busy ? t("sign.busy") : t("sign.sign_in")}</Button></div>
      <p class="quiet">{t("sign.private_window")}</p>
    </form>
  );
}
