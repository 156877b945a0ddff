import { useState } from "preact/hooks";

import { Button } from "../../parts/BigButton.tsx";
import { Section } from "../../parts/Card.tsx";
import { Notice } from "../../parts/Notice.tsx";
import type { SharedField } from "../../sharing/fieldFile.ts";
import { logbookId } from "../../store/place.ts";
import { showDay } from "../../words/dates.ts";
import { t } from "../../words/index.ts";
import { troubleOf, useAsked, wire } from "../people/ask.ts";

interface ShareLine {
  id: string;
  name: string;
  expires_at: string;
  uses_left: number;
  /** Told once, when it is made. */
  code?: string;
}

/** A code that opens a copy of the field for anybody with an account on this server. */
export function ShareCodes({ make }: { make: () => SharedField }) {
  const path = `/api/logbooks/${logbookId.value}/field-shares`;
  const { data, again } = useAsked<{ field_shares: ShareLine[] }>(path);
  const [made, setMade] = useState<ShareLine | null>(null);
  const [trouble, setTrouble] = useState<string | null>(null);
  const share = async () => {
    const reply = await wire.post<ShareLine>(path, make());
    setTrouble(troubleOf(reply));
    setMade(reply.kind === "ok" ? reply.data : null);
    again();
  };
  const withdraw = async ({ id }: ShareLine) => {
    setTrouble(troubleOf(await wire.remove(`${path}/${id}`)));
    if (made?.id === id) setMade(null);
    again();
  };
  return (
    <Section title={t("field.by_code")}>
      <p>{t("field.by_code_about")}</p>
      <div class="buttons"><Button onClick={() => void share()}>{t("field.by_code_make")}</Button></div>
      {trouble && <Notice tone="stop" urgent><p>{trouble}</p></Notice>}
      {made && <Notice tone="good" title={t("field.code")} urgent><p class="share-code">{made.code}</p><p>{t("field.code_told_once")}</p></Notice>}
      {data && data.field_shares.length > 0 && (
        <ul class="rows">
          {data.field_shares.map((one) => (
            <li class="person" key={one.id}>
              <p>{t("field.code_open_is", { name: one.name, day: showDay(one.expires_at.slice(0, 10)), n: one.uses_left })}</p>
              <div class="buttons"><Button onClick={() => void withdraw(one)}>{t("people.withdraw")}</Button></div>
            </li>
          ))}
        </ul>
      )}
    </Section>
  );
}
