import { useLocation } from "wouter-preact";

import { serverSays, session } from "../../account/session.ts";
import { Screen } from "../../parts/Screen.tsx";
import { t } from "../../words/index.ts";
import { FirstAccountForm } from "./FirstAccountForm.tsx";
import { SignInForm } from "./SignInForm.tsx";

/** Signing in, or making the first account of a new server. Both lead to today. */
export function SignIn() {
  const [path, navigate] = useLocation();
  const known = session.value?.account;
  const first = !known && serverSays.value?.first_run === true;
  const done = () => path === "/sign-in" && navigate("/", { replace: true });
  return (
    <Screen title={first ? t("sign.first_title") : t("sign.title")} {...(known && { back: "/" })}>
      <p>{first ? t("sign.first_about") : known ? t("sign.again", { name: known.display_name }) : t("sign.about")}</p>
      {first ? <FirstAccountForm done={done} /> : <SignInForm name={known?.sign_in_name ?? ""} done={done} />}
    </Screen>
  );
}
