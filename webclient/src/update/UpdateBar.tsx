import { signal } from "@preact/signals";
import { useLocation } from "wouter-preact";

import { Button } from "../parts/BigButton.tsx";
import { t } from "../words/index.ts";
import { busyScreens } from "./busy.ts";
import { takeUpdate, updateWaits } from "./worker.ts";

const later = signal(false);

/** Where people record: nothing is offered there, whatever the screen itself says. */
const RECORDING = /^\/(outing|watch|conditioning|attempt|note|fence\/new)\b/;

/** Offers a waiting version, calmly and never in the middle of something. */
export function UpdateBar() {
  const [path] = useLocation();
  if (!updateWaits.value || busyScreens.value > 0 || later.value || RECORDING.test(path)) return null;
  return (
    <div class="update" role="status">
      <span class="update__words">{t("frame.update_ready")}</span>
      <Button tone="main" onClick={takeUpdate}>{t("frame.update_now")}</Button>
      <Button tone="quiet" onClick={() => (later.value = true)}>{t("frame.update_later")}</Button>
    </div>
  );
}
