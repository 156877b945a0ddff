import { useEffect, useState } from "preact/hooks";
import { Link } from "wouter-preact";

import { exportAll } from "../../copies/exportAll.ts";
import { Button } from "../../parts/BigButton.tsx";
import { Section } from "../../parts/Card.tsx";
import { useLive } from "../../store/live.ts";
import { askToPersist, promised, type Promised, room, type Room } from "../../store/persist.ts";
import { openDb } from "../../store/place.ts";
import { t } from "../../words/index.ts";
import { showBytes } from "./bytes.ts";

/** How much room there is, what the browser promised, and a copy to take away. */
export function StoragePart() {
  const [space, setSpace] = useState<Room | null>(null);
  const [promise, setPromise] = useState<Promised>("unknown");
  const entries = useLive(() => openDb.value!.entries.count(), []);
  useEffect(() => {
    void room().then(setSpace);
    void promised().then(setPromise);
  }, [entries]);
  return (
    <Section title={t("settings.storage")}>
      <dl class="facts">
        <dt>{t("settings.records")}</dt><dd>{entries ?? "…"}</dd>
        <dt>{t("settings.used")}</dt><dd><Used space={space} /></dd>
        <dt>{t("settings.promise")}</dt><dd>{t(`settings.promise_${promise}`)}</dd>
      </dl>
      {promise === "not_promised" && <div class="buttons"><Button onClick={() => void askToPersist().then(setPromise)}>{t("settings.ask_promise")}</Button></div>}
      <p class="quiet">{t("settings.export_words")}</p>
      <div class="buttons"><Button onClick={() => void exportAll()}>{t("settings.export")}</Button><Link class="button" href="/import">{t("import.title")}</Link></div>
    </Section>
  );
}

function Used({ space }: { space: Room | null }) {
  if (!space) return <>{t("settings.unknown")}</>;
  return (
    <>
      {t("settings.used_of", { used: showBytes(space.used_bytes), of: showBytes(space.of_bytes) })}{" "}
      <meter min={0} max={space.of_bytes} high={space.of_bytes * 0.8} value={space.used_bytes} aria-label={t("settings.used")} />
    </>
  );
}
