import { useState } from "preact/hooks";
import { Link } from "wouter-preact";

import { takeIn } from "../../imports/takeIn.ts";
import { Button } from "../../parts/BigButton.tsx";
import { Notice } from "../../parts/Notice.tsx";
import { planField } from "../../sharing/bringField.ts";
import { nameOf, type SharedField } from "../../sharing/fieldFile.ts";
import { useLive } from "../../store/live.ts";
import { here } from "../../store/place.ts";
import { showDay } from "../../words/dates.ts";
import { t } from "../../words/index.ts";

/** What a shared field holds, what of it is new in a logbook, and the button that brings it in. */
export function FieldPreview({ shared, into }: { shared: SharedField; into: { id: string; title: string } }) {
  const [brought, setBrought] = useState(false);
  const plan = useLive(() => planField(here().db, into.id, shared), [into.id, shared]);
  if (!plan) return null;
  const bring = async () => {
    await takeIn({ ...here(), logbook_id: into.id }, plan.entries);
    setBrought(true);
  };
  const lines = [
    t("field.holds", { fences: t("field.fences_count", { n: plan.counts.fence }), tracks: t("field.tracks_count", { n: plan.counts.track }), day: showDay(shared.made_at.slice(0, 10)) }),
    plan.own ? t("field.own") : t("field.would", { fresh: plan.fresh, renewed: plan.renewed, already: plan.already }),
    plan.kept.length > 0 && t("field.kept", { names: plan.kept.join(", ") }),
  ];
  return (
    <Notice
      tone={brought ? "good" : "plain"} title={nameOf(shared)} urgent
      actions={plan.entries.length > 0 ? <Button tone="main" onClick={() => void bring()}>{t("field.bring_into", { title: into.title })}</Button> : <Link class="button" href="/fields">{t("field.fields")}</Link>}
    >
      {brought && <p><strong>{t("field.brought")}</strong></p>}
      {lines.map((line) => line && <p key={line}>{line}</p>)}
    </Notice>
  );
}
