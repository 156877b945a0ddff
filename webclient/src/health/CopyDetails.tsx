import { useState } from "preact/hooks";

import { Button } from "../parts/BigButton.tsx";
import { t } from "../words/index.ts";
import { diagnose } from "./diagnostics.ts";

/** Copies the diagnostics; where copying is not allowed, shows them to be copied by hand. */
export function CopyDetails() {
  const [text, setText] = useState<string | null>(null);
  const [copied, setCopied] = useState(false);
  const copy = async () => {
    const details = JSON.stringify(await diagnose(), null, 2);
    setText(details);
    setCopied(await navigator.clipboard.writeText(details).then(() => true, () => false));
  };
  return (
    <>
      <Button onClick={() => void copy()}>{copied ? t("frame.copied") : t("frame.copy_details")}</Button>
      {text && !copied && <textarea class="text-box__input" rows={8} readOnly value={text} aria-label={t("frame.copy_details")} />}
    </>
  );
}
