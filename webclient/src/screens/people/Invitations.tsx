import { useState } from "preact/hooks";

import type { Role } from "../../entries/bodies.ts";
import { Button } from "../../parts/BigButton.tsx";
import { Choices } from "../../parts/Choices.tsx";
import { Notice } from "../../parts/Notice.tsx";
import { showDay } from "../../words/dates.ts";
import { t } from "../../words/index.ts";
import { type InvitationLine, troubleOf, useAsked, wire } from "./ask.ts";

const HELPERS = ["coach", "scribe", "reader"] as const;

/** Making an invitation, handing its link over, and withdrawing those nobody has taken up. */
export function Invitations({ book }: { book: string }) {
  const path = `/api/logbooks/${book}/invitations`;
  const { data, again } = useAsked<{ invitations: InvitationLine[] }>(path);
  const [role, setRole] = useState<Role>("coach");
  const [made, setMade] = useState<InvitationLine | null>(null);
  const [trouble, setTrouble] = useState<string | null>(null);
  const invite = async () => {
    const reply = await wire.post<InvitationLine>(path, { role });
    setTrouble(troubleOf(reply));
    setMade(reply.kind === "ok" ? reply.data : null);
    again();
  };
  const withdraw = async (one: InvitationLine) => {
    setTrouble(troubleOf(await wire.remove(`${path}/${one.id}`)));
    if (made?.id === one.id) setMade(null);
    again();
  };
  return (
    <>
      <Choices label={t("people.as")} value={role} choices={HELPERS.map((value) => ({ value, words: t(`role.${value}`) }))} onChoose={(value) => value && setRole(value)} />
      <p class="quiet">{t(`role.${role}`)}: {t(`people.may_${role as (typeof HELPERS)[number]}`)}</p>
      <div class="buttons"><Button tone="main" onClick={() => void invite()}>{t("people.make")}</Button></div>
      {trouble && <Notice tone="stop" urgent><p>{trouble}</p></Notice>}
      {made && <Made one={made} />}
      {data && data.invitations.length > 0 && <h3>{t("people.open")}</h3>}
      <ul class="rows">
        {data?.invitations.map((one) => (
          <li class="person" key={one.id}>
            <p>{t(`role.${one.role}`)}, {t("people.until", { date: showDay(one.expires_at.slice(0, 10)) })}</p>
            <div class="buttons"><Button onClick={() => void withdraw(one)}>{t("people.withdraw")}</Button></div>
          </li>
        ))}
      </ul>
    </>
  );
}

function Made({ one }: { one: InvitationLine }) {
  const link = `${location.origin}/invited/${one.code}`;
  const [copied, setCopied] = useState(false);
  const share = () => void navigator.share({ url: link, text: t("people.share_text") }).catch(() => undefined);
  const copy = () => void navigator.clipboard.writeText(link).then(() => setCopied(true), () => undefined);
  return (
    <Notice
      tone="good" title={t("people.made")} urgent
      actions={
        <>
          {"share" in navigator && <Button tone="main" onClick={share}>{t("people.share")}</Button>}
          <Button onClick={copy}>{copied ? t("frame.copied") : t("people.copy")}</Button>
        </>
      }
    >
      <p class="link-to-copy">{link}</p>
      <p class="quiet">{t("people.made_about")}</p>
    </Notice>
  );
}
