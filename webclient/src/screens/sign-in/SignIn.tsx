import { useEffect } from "preact/hooks";
import { useLocation } from "wouter-preact";

import { isLocal, serverSays, session } from "../../account/session.ts";
import { askSession } from "../../account/sign.ts";
import { Screen } from "../../parts/Screen.tsx";
import { t } from "../../words/index.ts";
import { FirstAccountForm } from "./FirstAccountForm.tsx";
import { SignInForm } from "./SignInForm.tsx";
import { StartHere } from "./StartHere.tsx";

/** Signing in, making the first account of a new server, or starting with none. All lead to today. */
export function SignIn() {
  const [path, navigate] = useLocation();
  const local = isLocal.value;
  const known = local ? null : session.value?.account;
  const first = !known && serverSays.value?.first_run === true;
  const done = () => path === "/sign-in" && navigate("/", { replace: true });
  useEffect(() => {
    if (local) void askSession().then((told) => (serverSays.value = told));
  }, [local]);
  return (
    <Screen title={first ? t("sign.first_title") : t("sign.title")} {...((known || local) && { back: "/" })}>
      {local && <p>{t("local.only")}</p>}
      <p>{first ? t("sign.first_about") : known ? t("sign.again", { name: known.display_name }) : t("sign.about")}</p>
      {first ? <FirstAccountForm done={done} /> : <SignInForm name={known?.sign_in_name ?? ""} done={done} />}
      {!known && !local && <StartHere done={done} />}
    </Screen>
  );
}
