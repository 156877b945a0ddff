import { useElsewhere } from "../../account/elsewhere.ts";
import { Screen } from "../../parts/Screen.tsx";
import { t } from "../../words/index.ts";

/** Said where a standing or a finding is not in what last reached this phone; first the person's other
 * logbooks are looked through, for a link may lead into any of them. */
export function Missing({ back, horseId }: { back: string; horseId: string }) {
  const looking = useElsewhere(horseId);
  return <Screen title={t("board.title")} back={back}>{looking ? null : <p>{t("finding.gone")}</p>}</Screen>;
}
