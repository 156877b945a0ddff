import { useState } from "preact/hooks";

import { isLocal, logbooks } from "../../account/session.ts";
import { handOver } from "../../copies/handOver.ts";
import { Button } from "../../parts/BigButton.tsx";
import { Section } from "../../parts/Card.tsx";
import { NotHere } from "../../parts/NotHere.tsx";
import { Screen } from "../../parts/Screen.tsx";
import { type SharedField, writeField } from "../../sharing/fieldFile.ts";
import { useRecords, useRole } from "../../store/book.ts";
import { logbookId } from "../../store/place.ts";
import { t } from "../../words/index.ts";
import { FieldPreview } from "./FieldPreview.tsx";
import { ShareCodes } from "./ShareCodes.tsx";
import { useField } from "./useField.ts";

/** Handing a field on: as a file, by a code, or straight into another logbook. */
export function ShareScreen({ params }: { params: { id: string } }) {
  const view = useField(params.id);
  const tracks = useRecords("track", { field_id: params.id });
  const role = useRole();
  const [positions, setPositions] = useState(false);
  const [notes, setNotes] = useState(false);
  if (view === "missing") return <NotHere />;
  if (view === "loading" || !tracks) return <p class="screen quiet">{t("field.loading")}</p>;
  const made = () => writeField(view.field, view.fences, tracks, { positions, notes }, new Date().toISOString());
  return (
    <Screen title={t("field.share_of", { name: view.field.body.name })} back={`/field/${params.id}`}>
      <p>{t("field.share_about", { fences: t("field.fences_count", { n: view.fences.length }), tracks: t("field.tracks_count", { n: tracks.length }) })}</p>
      <Tick checked={positions} change={setPositions} label={t("field.with_positions")} />
      <p class="quiet">{t("field.with_positions_hint")}</p>
      <Tick checked={notes} change={setNotes} label={t("field.with_notes")} />
      <Section title={t("field.as_file")}>
        <p>{t("field.as_file_about")}</p>
        <div class="buttons"><Button tone="main" onClick={() => void handOver(fileName(view.field.body.name), [JSON.stringify(made(), null, 1)])}>{t("field.as_file_give")}</Button></div>
      </Section>
      {!isLocal.value && (role === "rider" || role === "coach") && <ShareCodes make={made} />}
      <IntoOther make={made} />
    </Screen>
  );
}

function Tick({ checked, change, label }: { checked: boolean; change: (checked: boolean) => void; label: string }) {
  return (
    <label class="tick">
      <input type="checkbox" checked={checked} onChange={() => change(!checked)} />
      <span>{label}</span>
    </label>
  );
}

const fileName = (name: string): string => `fieldtally-field-${name.toLowerCase().replace(/[^a-z0-9]+/g, "-").slice(0, 40)}.json`;

/** For somebody who writes in several logbooks: a copy, in one tap more. */
function IntoOther({ make }: { make: () => SharedField }) {
  const [going, setGoing] = useState<{ shared: SharedField; into: { id: string; title: string } } | null>(null);
  const others = logbooks.value.filter(({ id, role }) => role !== "reader" && id !== logbookId.value);
  if (!others.length) return null;
  return (
    <Section title={t("field.into_other")}>
      <div class="buttons">{others.map((into) => <Button onClick={() => setGoing({ shared: make(), into })} key={into.id}>{into.title}</Button>)}</div>
      {going && <FieldPreview {...going} />}
    </Section>
  );
}
