import { useState } from "preact/hooks";
import { useLocation } from "wouter-preact";

import { exportOne } from "../../copies/exportAll.ts";
import { Described } from "../../describe/Described.tsx";
import { Button } from "../../parts/BigButton.tsx";
import { Notice } from "../../parts/Notice.tsx";
import { Told } from "../../parts/Told.tsx";
import { toast } from "../../parts/toast.ts";
import type { EntryRow } from "../../store/db.ts";
import { here } from "../../store/place.ts";
import { discardEntries } from "../../store/write.ts";
import { t } from "../../words/index.ts";
import { toldFault } from "../../words/told.ts";
import { MendForm } from "./MendForm.tsx";
import { mendablePath, screenOf } from "./mend.ts";

export function RefusedEntry({ entry }: { entry: EntryRow }) {
  const [doing, setDoing] = useState<"nothing" | "mending" | "discarding">("nothing");
  const [, navigate] = useLocation();
  const screen = screenOf(entry);
  const path = mendablePath(entry);
  const discard = async () => {
    await discardEntries({ ...here(), logbook_id: entry.logbook_id }, entry.record_id, [entry.id]);
    toast(t("needs.discarded"));
  };
  return (
    <Notice
      tone="stop"
      actions={
        <>
          {path && doing !== "mending" && <Button tone="main" onClick={() => setDoing("mending")}>{t("needs.mend")}</Button>}
          {screen && <Button onClick={() => navigate(screen)}>{t("needs.open")}</Button>}
          <Button onClick={() => void exportOne(entry)}>{t("needs.export")}</Button>
          {doing === "discarding" ? <Button tone="stop" onClick={() => void discard()}>{t("needs.discard_sure")}</Button> : <Button tone="stop" onClick={() => setDoing("discarding")}>{t("needs.discard")}</Button>}
        </>
      }
    >
      <p><strong><Described entry={entry} /></strong></p>
      {entry.refusal && <p><Told of={toldFault(entry.refusal)} /></p>}
      {path && doing === "mending" && <MendForm entry={entry} path={path} done={() => setDoing("nothing")} />}
    </Notice>
  );
}
