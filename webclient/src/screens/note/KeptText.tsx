import { useEffect, useRef } from "preact/hooks";

import { useDraft } from "../../store/book.ts";
import { TextBox } from "../../parts/TextBox.tsx";

interface Props {
  draftKey: string;
  /** What the record says. */
  said: string | null;
  /** Says whether it is on the disk. */
  keep: (text: string | null) => Promise<boolean>;
  label: string;
  hint: string;
  most: number;
  lines?: number;
}

/** Text that needs no saving: half typed it is a draft, left it is an entry, also when left with the whole screen. */
export function KeptText({ draftKey, said, keep, ...box }: Props) {
  const [text, setText, clear] = useDraft(draftKey, said ?? "");
  const keeping = useRef<string | null | undefined>(undefined); // on its way, or there and not yet drawn
  useEffect(() => void (keeping.current = undefined), [said]);
  const finish = useRef(async (): Promise<void> => undefined);
  finish.current = async () => {
    const next = text.trim() || null;
    if (next === (keeping.current === undefined ? said : keeping.current)) return;
    keeping.current = next;
    if (await keep(next)) clear();
    else keeping.current = undefined;
  };
  useEffect(() => () => void finish.current(), []);
  return (
    <div onFocusOut={() => void finish.current()}>
      <TextBox value={text} onInput={setText} {...box} />
    </div>
  );
}
