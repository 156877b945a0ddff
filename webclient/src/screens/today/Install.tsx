import { useState } from "preact/hooks";

import { Button } from "../../parts/BigButton.tsx";
import { Notice } from "../../parts/Notice.tsx";
import { recall, remember } from "../../store/little.ts";
import { syncState } from "../../sync/state.ts";
import { t } from "../../words/index.ts";
import { installed, platform } from "../help/platform.ts";

const DISMISSED = "install_dismissed";

/** Why and how to put the app on the home screen. Says so once; on iPhones again while something unsent is at stake. */
export function Install() {
  const [gone, setGone] = useState(recall<boolean>(DISMISSED) ?? false);
  const system = platform();
  const atStake = system === "ios" && syncState.value.waiting > 0;
  if (installed() || system === "desk" || (gone && !atStake)) return null;
  const dismiss = () => {
    remember(DISMISSED, true);
    setGone(true);
  };
  return (
    <Notice title={t("help.install_title")} actions={!gone && <Button onClick={dismiss}>{t("today.install_later")}</Button>}>
      <p>{atStake ? t("help.install_at_stake") : t("help.install_why")}</p>
      <p>{t(`help.install_${system}`)}</p>
    </Notice>
  );
}
