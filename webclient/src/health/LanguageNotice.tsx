import { useEffect } from "preact/hooks";

import { Button } from "../parts/BigButton.tsx";
import { Notice } from "../parts/Notice.tsx";
import { lacking, readWords, t } from "../words/index.ts";

/** Says why the screen is English when another language was chosen, and tries again as soon as there is signal. */
export function LanguageNotice() {
  const language = lacking.value;
  useEffect(() => {
    if (!language) return;
    const again = () => void readWords().catch(() => undefined);
    addEventListener("online", again);
    return () => removeEventListener("online", again);
  }, [language]);
  if (!language) return null;
  const again = <Button onClick={() => void readWords().catch(() => undefined)}>{t("frame.try_again")}</Button>;
  return <Notice tone="attention" title={t("frame.lacking_title", { language: t(`settings.language_${language}`) })} actions={again}><p>{t("frame.lacking")}</p></Notice>;
}
