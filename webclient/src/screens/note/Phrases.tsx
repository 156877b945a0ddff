import { useState } from "preact/hooks";

import { Button } from "../../parts/BigButton.tsx";
import { TextBox } from "../../parts/TextBox.tsx";
import { recall, remember } from "../../store/little.ts";
import { t } from "../../words/index.ts";

const KEPT = "phrases";
const MOST = 20;

const lines = (text: string): string[] => text.split("\n").map((line) => line.trim()).filter(Boolean).slice(0, MOST);

/** Phrases to tap instead of typing; the person's own once they were changed. */
export function Phrases({ onPick }: { onPick: (phrase: string) => void }) {
  const [own, setOwn] = useState(recall<string[]>(KEPT));
  const [editing, setEditing] = useState(false);
  const phrases = own ?? lines(t("note.phrases"));
  const change = (text: string) => {
    const next = lines(text);
    remember(KEPT, next);
    setOwn(next);
  };
  return (
    <div class="phrases" role="group" aria-label={t("note.phrases_label")}>
      <div class="buttons">
        {phrases.map((phrase) => <Button onClick={() => onPick(phrase)} key={phrase}>{phrase}</Button>)}
        <Button tone="quiet" pressed={editing} onClick={() => setEditing(!editing)}>{t("note.phrases_edit")}</Button>
      </div>
      {editing && <Editor phrases={phrases} onChange={change} />}
    </div>
  );
}

function Editor({ phrases, onChange }: { phrases: string[]; onChange: (text: string) => void }) {
  const [text, setText] = useState(phrases.join("\n"));
  const typed = (next: string) => {
    setText(next);
    onChange(next);
  };
  return <TextBox label={t("note.phrases_own")} hint={t("note.phrases_hint")} value={text} onInput={typed} lines={6} />;
}
