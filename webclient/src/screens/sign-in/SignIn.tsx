import { Screen } from "../../parts/Screen.tsx";
import { t } from "../../words/index.ts";

export function SignIn() {
  return <Screen title={t("frame.title")}>{null}</Screen>;
}
