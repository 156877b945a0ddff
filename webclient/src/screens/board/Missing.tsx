import { Screen } from "../../parts/Screen.tsx";
import { t } from "../../words/index.ts";

/** Said where a standing or a finding is not in what last reached this phone. */
export function Missing({ back }: { back: string }) {
  return <Screen title={t("board.title")} back={back}><p>{t("finding.gone")}</p></Screen>;
}
