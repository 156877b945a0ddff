import { Screen } from "../../parts/Screen.tsx";
import { t } from "../../words/index.ts";

export function Settings() {
  return <Screen title={t("frame.title")}>{null}</Screen>;
}
