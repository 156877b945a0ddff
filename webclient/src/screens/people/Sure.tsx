import { useState } from "preact/hooks";

import { Button } from "../../parts/BigButton.tsx";
import { t } from "../../words/index.ts";

/** A button for what cannot be undone: the first tap says what will happen, the second does it. */
export function Sure({ ask, about, act }: { ask: string; about: string; act: () => void }) {
  const [asked, setAsked] = useState(false);
  if (!asked) return <div class="buttons"><Button onClick={() => setAsked(true)}>{ask}</Button></div>;
  return (
    <>
      <p role="status">{about}</p>
      <div class="buttons">
        <Button tone="stop" onClick={act}>{ask}</Button>
        <Button tone="quiet" onClick={() => setAsked(false)}>{t("frame.cancel")}</Button>
      </div>
    </>
  );
}
