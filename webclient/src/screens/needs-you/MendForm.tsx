import { useState } from "preact/hooks";

import { fieldWords } from "../../describe/values.ts";
import type { KindName } from "../../entries/bodies.ts";
import type { Plain } from "../../entries/merge.ts";
import { Button } from "../../parts/BigButton.tsx";
import { TextBox } from "../../parts/TextBox.tsx";
import { save } from "../../store/book.ts";
import type { EntryRow } from "../../store/db.ts";
import { t } from "../../words/index.ts";
import { read, unitOf, valueAt, withValue } from "./mend.ts";

/** Asks for the one wrong value again; saving it supersedes the refused entry. */
export function MendForm({ entry, path, done }: { entry: EntryRow; path: string[]; done: () => void }) {
  const before = valueAt(entry.body as Plain, path);
  const [text, setText] = useState(before === null || before === undefined ? "" : String(before));
  const keep = async (event: Event) => {
    event.preventDefault();
    const mended = withValue(entry.body as Plain, path, read(text, before));
    const saved = await save(entry.kind as KindName, mended as never, entry.record_id).catch(() => null);
    if (saved) done();
  };
  const field = fieldWords(path.at(-1)!);
  const unit = unitOf(entry.kind, path);
  const label = unit ? t("needs.mend_field_in", { field, unit }) : t("needs.mend_field", { field });
  const long = typeof before === "string" && before.length > 80;
  return (
    <form class="form" onSubmit={(event) => void keep(event)}>
      <TextBox label={label} value={text} onInput={setText} {...(long && { lines: 6 })} />
      <div class="buttons"><Button tone="main" type="submit">{t("needs.save_mended")}</Button></div>
    </form>
  );
}
