import { Button } from "../../parts/BigButton.tsx";
import { Section } from "../../parts/Card.tsx";
import { Screen } from "../../parts/Screen.tsx";
import { CopyDetails } from "../../health/CopyDetails.tsx";
import { takeUpdate, updateWaits } from "../../update/worker.ts";
import { APP_VERSION, BUILD } from "../../update/version.ts";
import { t } from "../../words/index.ts";
import { AccountPart } from "./AccountPart.tsx";
import { ChoicesPart } from "./ChoicesPart.tsx";
import { Places } from "./Places.tsx";
import { MediaPart } from "../media/MediaPart.tsx";
import { StoragePart } from "./StoragePart.tsx";

/** Where to go besides the main screens, and how this device is set up. */
export function Settings() {
  return (
    <Screen title={t("settings.title")} wide>
      <div class="columns">
        <div>
          <Places />
          <AccountPart />
          <ChoicesPart />
        </div>
        <div>
          <StoragePart />
          <MediaPart />
          <Section title={t("settings.about")}>
            <p>{t("settings.version")}: {t("settings.version_words", { version: APP_VERSION, build: BUILD })}</p>
            {updateWaits.value && <div class="buttons"><Button tone="main" onClick={takeUpdate}>{t("frame.update_now")}</Button></div>}
            <p class="quiet">{t("settings.details_words")}</p>
            <div class="buttons"><CopyDetails /></div>
          </Section>
        </div>
      </div>
    </Screen>
  );
}
