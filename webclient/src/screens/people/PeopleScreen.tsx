import { useState } from "preact/hooks";

import { session } from "../../account/session.ts";
import { Button } from "../../parts/BigButton.tsx";
import { Section } from "../../parts/Card.tsx";
import { Notice } from "../../parts/Notice.tsx";
import { Screen } from "../../parts/Screen.tsx";
import { useRole } from "../../store/book.ts";
import { logbookId } from "../../store/place.ts";
import { t } from "../../words/index.ts";
import { type MemberLine, troubleOf, useAsked, wire } from "./ask.ts";
import { Invitations } from "./Invitations.tsx";
import { Sure } from "./Sure.tsx";

/** Who sees this logbook. Its rider invites and puts out; a helper may leave. */
export function PeopleScreen() {
  const book = logbookId.value!;
  const { data, trouble, again } = useAsked<{ members: MemberLine[] }>(`/api/logbooks/${book}/members`);
  const hers = useRole() === "rider";
  return (
    <Screen title={t("people.title")} back="/settings">
      <p class="quiet">{t("people.about")}</p>
      {trouble && <Notice tone="attention" urgent actions={<Button onClick={again}>{t("frame.try_again")}</Button>}><p>{trouble}</p></Notice>}
      {!data && !trouble && <p class="quiet">{t("people.asking")}</p>}
      {data && <ul class="rows">{data.members.map((one) => <Member one={one} hers={hers} again={again} key={one.account_id} />)}</ul>}
      {hers && data && <Section title={t("people.invite")}><Invitations book={book} /></Section>}
    </Screen>
  );
}

function Member({ one, hers, again }: { one: MemberLine; hers: boolean; again: () => void }) {
  const [trouble, setTrouble] = useState<string | null>(null);
  const me = one.account_id === session.value?.account?.id;
  const end = async () => {
    const found = troubleOf(await wire.remove(`/api/logbooks/${logbookId.value}/members/${one.account_id}`));
    setTrouble(found);
    if (!found) me ? location.assign("/") : again();
  };
  return (
    <li class="person">
      <p><strong>{one.display_name}</strong>{me && ` (${t("people.you")})`}<br /><span class="quiet">{t(`role.${one.role}`)}: {t(`people.may_${one.role}`)}</span></p>
      {one.role !== "rider" && (hers || me) && (
        <Sure ask={me ? t("people.leave") : t("people.put_out", { name: one.display_name })} about={me ? t("people.leave_about") : t("people.put_out_about", { name: one.display_name })} act={() => void end()} />
      )}
      {trouble && <p class="text-box__trouble" role="alert">{trouble}</p>}
    </li>
  );
}
