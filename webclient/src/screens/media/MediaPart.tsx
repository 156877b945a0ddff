import { useState } from "preact/hooks";

import { isLocal } from "../../account/session.ts";
import { freeSpace, mediaHere } from "../../media/space.ts";
import { Button } from "../../parts/BigButton.tsx";
import { Section } from "../../parts/Card.tsx";
import { recall, remember } from "../../store/little.ts";
import { useLive } from "../../store/live.ts";
import { openDb } from "../../store/place.ts";
import { askToSend, BY_HAND } from "../../sync/media.ts";
import { waitingMedia } from "../../sync/mediaWaiting.ts";
import { syncNow } from "../../sync/schedule.ts";
import { t } from "../../words/index.ts";
import { showBytes } from "../settings/bytes.ts";

/** What photos and voice notes take on this phone, when they are sent, and making room. */
export function MediaPart() {
  const rows = useLive(() => mediaHere(openDb.value!), []) ?? [];
  const waiting = useLive(() => waitingMedia(openDb.value!), []) ?? [];
  const [byHand, setByHand] = useState(recall(BY_HAND) === true);
  const [said, say] = useState<string | null>(null);
  const sent = rows.filter(({ state }) => state === "sent");
  const refused = waiting.filter(({ refusal }) => refusal);
  const free = async () => {
    const n = await freeSpace(openDb.value!);
    say(n === null ? t("media.free_offline") : t("media.freed", { n }));
  };
  const send = async () => {
    askToSend();
    await syncNow();
  };
  const choose = () => {
    remember(BY_HAND, !byHand);
    setByHand(!byHand);
  };
  if (isLocal.value || (!rows.length && said === null)) return null;
  return (
    <Section title={t("media.title")}>
      <p>{t("media.here", { n: rows.length, size: sizeOf(rows) })} {waiting.length > 0 && t("media.waiting", { n: waiting.length })}</p>
      {refused.length > 0 && <p class="text-box__trouble">{refused[0]!.refusal === "quota_full" ? t("media.quota_full") : t("media.refused", { n: refused.length, code: refused[0]!.refusal! })}</p>}
      <label class="tick"><input type="checkbox" checked={byHand} onChange={choose} /><span>{t("media.by_hand")}</span></label>
      <div class="buttons">
        {waiting.length > 0 && <Button tone="main" onClick={() => void send()}>{t("media.send_now")}</Button>}
        {sent.length > 0 && <Button onClick={() => void free()}>{t("media.free", { size: sizeOf(sent) })}</Button>}
      </div>
      {sent.length > 0 && <p class="quiet">{t("media.free_words")}</p>}
      <p role="status">{said}</p>
    </Section>
  );
}

function sizeOf(rows: { size_bytes: number }[]): string {
  return showBytes(rows.reduce((sum, { size_bytes }) => sum + size_bytes, 0));
}
