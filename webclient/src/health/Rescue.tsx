import { session } from "../account/session.ts";
import { Button } from "../parts/BigButton.tsx";
import { Screen } from "../parts/Screen.tsx";
import { openState, tryAgain } from "../store/open.ts";
import { t } from "../words/index.ts";
import { CopyDetails } from "./CopyDetails.tsx";

/** When the phone's storage does not open: what happened in words, and what can be done about it. */
export function Rescue() {
  const state = openState.value;
  const which = state === "refused" || state === "moved_on" || state === "broken" ? state : "slow";
  return (
    <Screen title={t(`store.${which}_title`)}>
      <p>{t(`store.${which}`)}</p>
      <div class="buttons">
        <Button tone="main" onClick={() => void tryAgain(session.value!.account!.id)}>{t("frame.try_again")}</Button>
        <Button onClick={() => location.reload()}>{t("frame.reload")}</Button>
        <CopyDetails />
      </div>
    </Screen>
  );
}
