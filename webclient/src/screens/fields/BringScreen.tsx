import { useState } from "preact/hooks";

import { isLocal, logbooks } from "../../account/session.ts";
import { Button } from "../../parts/BigButton.tsx";
import { Notice } from "../../parts/Notice.tsx";
import { Screen } from "../../parts/Screen.tsx";
import { TextBox } from "../../parts/TextBox.tsx";
import { readField, type SharedField } from "../../sharing/fieldFile.ts";
import { logbookId } from "../../store/place.ts";
import { t } from "../../words/index.ts";
import { troubleOf, wire } from "../people/ask.ts";
import { FieldPreview } from "./FieldPreview.tsx";

/** A field that somebody shared: from a file, with no signal, or by a code. */
export function BringScreen() {
  const [shared, setShared] = useState<SharedField | null>(null);
  const [trouble, setTrouble] = useState<string | null>(null);
  const [code, setCode] = useState("");
  const into = logbooks.value.find(({ id }) => id === logbookId.value)!;
  const open = (text: string) => {
    const found = readField(text);
    setShared(typeof found === "string" ? null : found);
    setTrouble(typeof found === "string" ? t(`field.file_${found}`) : null);
  };
  const ask = async () => {
    const reply = await wire.post<object>("/api/field-shares", { code });
    if (reply.kind === "ok") return open(JSON.stringify(reply.data));
    setShared(null);
    setTrouble(troubleOf(reply));
  };
  return (
    <Screen title={t("field.bring")} back="/fields">
      <label class="text-box">
        <span class="text-box__label">{t("field.from_file")}</span>
        <input class="text-box__input" type="file" accept=".json" onChange={({ currentTarget: { files } }) => void files?.[0]?.text().then(open)} />
        <span class="text-box__hint">{t("field.from_file_hint")}</span>
      </label>
      {!isLocal.value && (
        <form class="form" onSubmit={(event) => { event.preventDefault(); void ask(); }}>
          <TextBox label={t("field.code")} hint={t("field.code_hint")} value={code} onInput={setCode} most={40} autoComplete="off" autoCapitalize="none" enterKeyHint="go" />
          <div class="buttons"><Button tone="main" type="submit" disabled={!code.trim()}>{t("field.code_open")}</Button></div>
        </form>
      )}
      {trouble && <Notice tone="stop" urgent><p>{trouble}</p></Notice>}
      {shared && <FieldPreview shared={shared} into={into} />}
    </Screen>
  );
}
